// Follow the report while `scorecard watch` runs: when a file is saved, take up the new page without losing the place,
// the settings or the keyboard's focus. A page that has settings of its own takes them up again where it offers
// window.makerScorecard.resume(), which is called once its contents are new.
"use strict";
(() => {
  const OFTEN = 700, SELDOM = 5000; // milliseconds between two looks; the second once the watch seems to have ended
  const PARTS = ["header", "main", "footer"];
  let seen = Number(document.currentScript.dataset.version);
  let missed = 0, pressed = false, typedAt = -Infinity;

  const line = document.createElement("p");
  line.id = "following";
  line.setAttribute("role", "status");
  document.body.append(line);
  const say = (words) => { if (line.textContent !== words) line.textContent = words; };

  // Nothing is exchanged under a finger that drags or a hand that types.
  addEventListener("pointerdown", () => { pressed = true; }, true);
  for (const kind of ["pointerup", "pointercancel", "blur"]) addEventListener(kind, () => { pressed = false; }, true);
  for (const kind of ["keydown", "input"]) addEventListener(kind, () => { typedAt = performance.now(); }, true);
  const isBusy = () => pressed || performance.now() - typedAt < 800;

  // What can be unfolded is known by the name in its summary and by what it is in, since rank and score may change.
  const nameOf = (fold) => {
    const around = fold.parentElement.closest("details");
    const summary = fold.querySelector("summary");
    const name = (summary?.querySelector("bdi") ?? summary)?.textContent;
    return `${around ? nameOf(around) : fold.closest("[id]")?.id}\n${name}`;
  };
  const folds = () => {
    const found = new Map();
    for (const fold of document.querySelectorAll("main details")) {
      let name = nameOf(fold);
      while (found.has(name)) name += "+";
      found.set(name, fold);
    }
    return [...found];
  };
  const unfolded = () => new Set(folds().flatMap(([name, fold]) => (fold.open ? [name] : [])));
  const unfold = (names) => { for (const [name, fold] of folds()) fold.open = names.has(name); };

  // Where an element is: by its id, by what it unfolds, or by its kind and place within the nearest element with an id.
  const addressOf = (element) => {
    if (element.id) return { id: element.id };
    const fold = element.tagName === "SUMMARY" && folds().find(([, one]) => one === element.parentElement);
    if (fold) return { fold: fold[0] };
    const home = element.closest("[id]");
    const kind = element.tagName;
    return { id: home?.id, kind, at: [...(home ?? document).querySelectorAll(kind)].indexOf(element) };
  };
  const at = ({ id, fold, kind, at }) => {
    if (fold) return folds().find(([name]) => name === fold)?.[1].querySelector("summary");
    const home = id ? document.getElementById(id) : document;
    return kind ? home?.querySelectorAll(kind)[at] : home;
  };

  // The place is held by the focused element where it is in sight, or else by what stands nearest to the top.
  const anchor = () => {
    if (scrollY === 0) return null;
    const { activeElement: focused } = document;
    const box = focused?.getBoundingClientRect();
    if (focused?.closest("main") && box.bottom > 0 && box.top < innerHeight) return { address: addressOf(focused), top: box.top };
    const shown = [...document.querySelectorAll("main [id]")].filter((one) => one.getClientRects().length);
    const top = (one) => one.getBoundingClientRect().top;
    const near = shown.reduce((best, one) => (best && Math.abs(top(best)) <= Math.abs(top(one)) ? best : one), null);
    return near && { address: addressOf(near), top: top(near) };
  };
  const back = (place, height) => {
    const element = place && at(place.address);
    scrollTo({ top: element ? scrollY + element.getBoundingClientRect().top - place.top : height, behavior: "instant" });
  };

  const selectionOf = (element) => {
    try { return [element.selectionStart, element.selectionEnd]; } catch { return null; }
  };
  const refocus = (address, selection) => {
    const element = address && at(address);
    if (!element || element === document.activeElement) return;
    element.focus({ preventScroll: true });
    try { if (selection?.[0] != null) element.setSelectionRange(...selection); } catch { /* not a text */ }
  };

  // Another style sheet or script comes with another version of the tool: then only loading the page anew will do.
  const dressing = (page) =>
    [...page.querySelectorAll("style, script")].filter((one) => one.type !== "application/json").map((one) => one.textContent).join("\n");

  const exchange = (fresh) => {
    document.title = fresh.title;
    for (const part of PARTS) {
      const nodes = [...(fresh.querySelector(part)?.childNodes ?? [])].map((node) => document.importNode(node, true));
      document.querySelector(part)?.replaceChildren(...nodes);
    }
    for (const data of fresh.querySelectorAll("script[type='application/json'][id]")) {
      const old = document.getElementById(data.id);
      if (old && !old.closest(PARTS.join())) old.textContent = data.textContent;
    }
  };

  const take = async () => {
    const answer = await fetch("/", { cache: "no-store" });
    const fresh = new DOMParser().parseFromString(await answer.text(), "text/html");
    if (isBusy()) return;
    if (dressing(fresh) !== dressing(document)) { location.reload(); return; }
    const focused = document.activeElement, had = focused && focused !== document.body && focused !== line;
    const address = had ? addressOf(focused) : null, selection = had ? selectionOf(focused) : null;
    const names = unfolded(), place = anchor(), height = scrollY;
    exchange(fresh);
    window.makerScorecard?.resume?.();
    unfold(names);
    refocus(address, selection);
    back(place, height);
    seen = Number(fresh.querySelector("script[data-version]").dataset.version);
  };

  const look = async () => {
    try {
      const state = await (await fetch("/state", { cache: "no-store" })).json();
      missed = 0;
      if (state.version !== seen && !isBusy()) await take();
      say(state.words);
    } catch {
      missed += 1;
      if (missed > 2) say("The watch has ended: this page stays as it is, and follows no more.");
    }
    setTimeout(look, missed > 2 ? SELDOM : OFTEN);
  };
  look();
})();
