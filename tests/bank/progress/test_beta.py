"""The beta posterior beside SciPy's (scipy.stats.beta), the outside check."""

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import beta as scipy_beta

from bank.progress.beta import above, cdf, interval, quantile

shapes = st.floats(min_value=0.3, max_value=400)
counts = st.integers(0, 200).flatmap(lambda n: st.tuples(st.integers(0, n), st.just(n)))


@given(x=st.floats(min_value=0, max_value=1), a=shapes, b=shapes)
def test_the_distribution_function_is_scipys(x: float, a: float, b: float) -> None:
    assert cdf(x, a, b) == pytest.approx(scipy_beta.cdf(x, a, b), abs=1e-10)


@given(p=st.floats(min_value=0.001, max_value=0.999), a=shapes, b=shapes)
def test_the_quantile_is_scipys(p: float, a: float, b: float) -> None:
    assert quantile(p, a, b) == pytest.approx(scipy_beta.ppf(p, a, b), abs=1e-8)


@given(found=counts, rate=st.floats(min_value=0.01, max_value=0.99))
def test_how_sure_one_can_be_is_scipys_posterior(found: tuple[int, int], rate: float) -> None:
    successes, count = found
    wanted = scipy_beta.sf(rate, successes + 1, count - successes + 1)
    assert above(rate, successes, count) == pytest.approx(wanted, abs=1e-9)


@pytest.mark.parametrize(("successes", "count"), [(0, 0), (2, 3), (3, 3), (18, 20), (0, 12)])
def test_the_range_of_a_rate_is_scipys(successes: int, count: int) -> None:
    wanted = scipy_beta.interval(0.9, successes + 1, count - successes + 1)
    assert interval(successes, count) == pytest.approx(wanted, abs=1e-9)


def test_two_of_three_say_very_little() -> None:
    low, high = interval(2, 3)
    assert low < 0.3 and high > 0.9


def test_a_distribution_without_shape_is_refused() -> None:
    with pytest.raises(ValueError, match="above 0"):
        cdf(0.5, 0, 1)
    with pytest.raises(ValueError, match="between 0 and 1"):
        quantile(1.5, 1, 1)
