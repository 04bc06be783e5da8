// Starts the page, and says when it stopped. It is a file of its own because the content security policy forbids inline
// script.

// The light that was chosen last, before anything is seen; light.rs keeps it.
try {
  document.documentElement.dataset.light = localStorage.getItem("coatwright light") ?? "";
} catch {
  // A browser that keeps nothing shows the light of the device.
}

// What fails without anybody having foreseen it ends the page: nothing of it answers any more, and nothing is saved. This
// has to work without the page's own code.
function stop() {
  if (document.getElementById("stopped")) return;
  const saving = document.getElementById("keeping");
  const state = saving?.dataset.state;
  if (saving) {
    saving.dataset.state = "stopped";
    saving.textContent = "";
  }
  const words = document.createElement("p");
  const lost = state === "failed" || state === "held" ? "Changes that were not saved are lost." : "The last change may be missing.";
  words.textContent = `This page stopped. Your saved work is safe. ${lost}`;
  const button = document.createElement("button");
  button.type = "button";
  button.id = "reload-stopped";
  button.textContent = "Reload";
  button.onclick = () => location.reload();
  const box = document.createElement("section");
  box.id = "stopped";
  box.className = "notice";
  box.setAttribute("role", "alert");
  box.append(words, button);
  document.body.prepend(box);
  document.getElementById("app").inert = true;
  scrollTo(0, 0);
}

// What goes wrong in an extension of the browser is not the page's, and two things are no faults: that a box changed its
// size twice in one frame, and that the person thought better of it.
function isOurs(message, error, file) {
  const where = `${file} ${error?.stack}`;
  return !/-extension:/.test(where) && !/^ResizeObserver loop|^Script error/.test(message) && error?.name !== "AbortError";
}

addEventListener("error", ({ message, error, filename }) => {
  if (isOurs(message, error, filename)) stop();
});
addEventListener("unhandledrejection", ({ reason }) => {
  if (isOurs(reason?.message, reason)) stop();
});

const { js, wasm } = document.querySelector("script[data-wasm]").dataset;
const address = (relative) => new URL(relative, document.baseURI).href;

// The build writes the digest of each file into a link of the page. Browsers check it for scripts by themselves,
// but not yet for a preloaded wasm file, so it is handed to the request.
function digest(of) {
  const links = [...document.querySelectorAll("link[rel=preload][integrity]")];
  return links.find((link) => link.href === of)?.integrity ?? "";
}

function say(sentences) {
  const lines = sentences.map((sentence) => {
    const line = document.createElement("p");
    line.textContent = sentence;
    return line;
  });
  const box = document.getElementById("app");
  box.setAttribute("role", "alert");
  box.replaceChildren(...lines);
}

try {
  const { default: start } = await import(address(js));
  const file = address(wasm);
  await start({ module_or_path: fetch(file, { integrity: digest(file) }) });
} catch (error) {
  console.error(error);
  say([
    "Coatwright couldn't start. Your saved work is safe.",
    "Check the connection and reload the page. If that doesn't help, update the browser or try another.",
    `What went wrong: ${error}`,
  ]);
}
