"use strict";
// One thing at a time; the fixes of a sentence one by one. Nothing is sent or kept anywhere.
(() => {
  const things = [...document.querySelectorAll(".thing")];
  const places = [...document.querySelectorAll("#places button")];
  const back = document.getElementById("back");
  const on = document.getElementById("on");
  const where = document.getElementById("where");
  // With more things than this, only the buttons near the present one and the first of each kind.
  const MANY = 16;
  const NEAR = 2;
  let now = 0;

  const off = (button, yes) => button.setAttribute("aria-disabled", String(yes));

  // Which fixes of a sentence are open is a count: 0 is none, one past the last shows it right.
  const opened = new Map();
  const last = (thing) => thing.querySelectorAll(".fixes li").length + 1;

  function openTo(thing, count) {
    const steps = last(thing);
    const open = Math.max(0, Math.min(steps, count));
    opened.set(thing, open);
    thing.querySelectorAll(".fix").forEach((fix) => fix.classList.toggle("open", Number(fix.dataset.first) <= open));
    thing.querySelectorAll(".fixes li").forEach((line, index) => line.classList.toggle("now", index === open - 1));
    thing.querySelector(".right").classList.toggle("open", open === steps);
    const openMore = thing.querySelector(".open-more");
    openMore.textContent = open >= steps - 1 ? "Show it right" : "Open a fix";
    off(openMore, open === steps);
    off(thing.querySelector(".close-one"), open === 0);
  }

  function show(index, focus) {
    now = Math.max(0, Math.min(things.length - 1, index));
    things.forEach((thing, at) => thing.classList.toggle("now", at === now));
    places.forEach((place, at) => place.setAttribute("aria-current", String(at === now)));
    if (things.length > MANY) nearPlaces();
    off(back, now === 0);
    off(on, now === things.length - 1);
    where.textContent = `${now + 1} of ${things.length}`;
    window.scrollTo(0, 0);
    if (focus) things[now].querySelector("h1").focus({ preventScroll: true });
  }

  function nearPlaces() {
    let before = true;
    places.forEach((place, at) => {
      const row = place.parentElement;
      const shown = Math.abs(at - now) <= NEAR || row.classList.contains("first");
      row.classList.toggle("far", !shown);
      row.classList.toggle("gap", shown && !before);
      before = shown;
    });
  }

  const openMore = (by) => {
    const thing = things[now];
    if (opened.has(thing)) openTo(thing, opened.get(thing) + by);
  };

  document.documentElement.classList.add("one-by-one");
  things.forEach((thing) => {
    if (!thing.querySelector(".fixes")) return;
    openTo(thing, 0);
    thing.querySelector(".open-more").addEventListener("click", () => openMore(1));
    thing.querySelector(".close-one").addEventListener("click", () => openMore(-1));
  });
  back.addEventListener("click", () => show(now - 1, false));
  on.addEventListener("click", () => show(now + 1, false));
  places.forEach((place, at) => place.addEventListener("click", () => show(at, false)));

  const keys = {
    ArrowRight: () => show(now + 1, true),
    PageDown: () => show(now + 1, true),
    ArrowLeft: () => show(now - 1, true),
    PageUp: () => show(now - 1, true),
    Home: () => show(0, true),
    End: () => show(things.length - 1, true),
    Enter: () => openMore(1),
    Backspace: () => openMore(-1),
  };
  document.addEventListener("keydown", (event) => {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    // What is typed into a line stays there; Enter on a button presses the button.
    if (event.target instanceof HTMLTextAreaElement) {
      if (event.key === "Enter") event.preventDefault(); // A line stays one line; a long one wraps.
      return;
    }
    if (event.key === "Enter" && event.target instanceof HTMLButtonElement) return;
    const act = keys[event.key];
    if (!act) return;
    event.preventDefault();
    act();
  });
  show(0, false);
})();
