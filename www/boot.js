// Starts the page. It is a file of its own because the content security policy forbids inline script.

// The light that was chosen last, before anything is seen; light.rs keeps it.
try {
  document.documentElement.dataset.light = localStorage.getItem("coatwright light") ?? "";
} catch {
  // A browser that keeps nothing shows the light of the device.
}

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
    "Coatwright could not start. Whatever you saved on this device is still there.",
    "Check the connection and reload the page. If that does not help, update the browser or try another one.",
    `What went wrong: ${error}`,
  ]);
}
