// Begin: read the data, take up what the address keeps, and follow every change.

const app = { all: false, beside: null, fresh: 0, timer: null, focus: null };

// Change what is tried, and show what follows; `stepped` names the criterion whose box is to be written anew.
function change(theApp, how, stepped) {
  how(theApp.state);
  show(theApp, stepped);
  clearTimeout(theApp.timer);
  theApp.timer = setTimeout(() => keepAddress(theApp), 200);
}

function show(theApp, stepped) {
  const { page, state } = theApp;
  const moved = addressOf(page, state) !== "";
  const result = moved ? ranked(page, state) : theApp.saved;
  theApp.result = result;
  showControls(theApp, result, stepped);
  showWhatIf(theApp, result);
  showOutcome(theApp, result);
  keepInSight();
}

// The bar at the foot grows with what it says: move what is being typed in out from under it.
function keepInSight() {
  const field = document.activeElement?.closest(".controls *, fieldset *");
  const bar = document.querySelector(".live");
  const under = field ? field.getBoundingClientRect().bottom + 8 - bar.getBoundingClientRect().top : 0;
  if (under > 0) window.scrollBy(0, under);
}

// Put what is tried into the address, without a new entry in the history.
function keepAddress(theApp) {
  theApp.timer = null;
  const address = addressOf(theApp.page, theApp.state);
  if (address === location.hash || (address === "" && !isTrying(location.hash))) return;
  try {
    history.replaceState(null, "", location.href.split("#")[0] + address);
  } catch {
    location.replace(address || "#weights"); // a browser that lets no file change its address
  }
}

// Take up what an address keeps. Another part of the page leaves what is tried alone; a name of nothing is said.
function follow(theApp, address) {
  const { state, odd } = isTrying(address) ? stateIn(theApp.page, address) : { state: theApp.state, odd: [] };
  theApp.state = address === "" || address === "#" ? savedState(theApp.page) : state;
  const { what } = theApp.state;
  if (what) theApp.asked = { maker: what.maker, criterion: what.criterion };
  theApp.fresh += 1;
  const nothing = isTrying(address) || namesAPart(address) ? [] : [address.slice(1)];
  sayOrHide(byId("try-odd"), oddSentence([...odd, ...nothing]));
  show(theApp, true);
  if (!isTrying(address)) keepAddress(theApp);
}

function namesAPart(address) {
  return address.length < 2 || document.getElementById(address.slice(1)) !== null;
}

function oddSentence(parts) {
  const shown = parts.slice(0, 3).map((part) => isolated(part));
  if (parts.length > 3) shown.push(`${parts.length - 3} more`);
  return parts.length ? `Not understood in the address of this page, and left aside: ${listed(shown)}.` : "";
}

// Read the page's data, anew where the page was made anew, and take up what was being tried.
function resume() {
  const block = byId("trying-data");
  if (!block) { app.page = null; return; }
  const kept = app.page && app.timer !== null ? addressOf(app.page, app.state) : location.hash;
  app.page = unpacked(JSON.parse(block.textContent));
  app.state = savedState(app.page);
  app.saved = ranked(app.page, app.state);
  Object.assign(app, { asked: null, fields: null, refused: null });
  buildControls(app);
  buildOutcome(app);
  buildWhatIf(app);
  byId("try-saved").addEventListener("click", () => asSaved(app));
  byId("trying").hidden = false;
  follow(app, kept);
  if (app.focus && document.activeElement === document.body) byId(app.focus)?.focus({ preventScroll: true });
}

function asSaved(theApp) {
  Object.assign(theApp, { state: savedState(theApp.page), asked: null });
  sayOrHide(byId("try-odd"), "");
  show(theApp, true);
  keepAddress(theApp);
}

document.addEventListener("focusin", (event) => { app.focus = event.target.closest("#trying") ? event.target.id : null; });
window.addEventListener("hashchange", () => { if (app.page) follow(app, location.hash); });
window.makerScorecard = { resume };
resume();
