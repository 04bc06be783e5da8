// What the device can do with things that leave the page or come in. Small, because the browser does the work.

// Text to bytes that are as few as the browser can make them, and back; more than `most` bytes are refused.
export async function pack(text) {
  const packed = new Blob([text]).stream().pipeThrough(new CompressionStream("deflate-raw"));
  return new Uint8Array(await new Response(packed).arrayBuffer());
}

export async function unpack(bytes, most) {
  const reader = new Blob([bytes]).stream().pipeThrough(new DecompressionStream("deflate-raw")).getReader();
  const parts = [];
  for (let size = 0; ; ) {
    const { done, value } = await reader.read();
    if (done) return new Blob(parts).text();
    size += value.length;
    if (size > most) {
      await reader.cancel();
      throw new Error("too large");
    }
    parts.push(value);
  }
}

// A file onto the device: where it is to lie, if the browser lets one choose, or else among the downloads. Tells the name
// that it was given, an empty one for a download, or nothing if the person thought better of it.
export async function save(name, type, content) {
  const blob = new Blob([content], { type });
  if (window.showSaveFilePicker) {
    try {
      const ending = name.slice(name.lastIndexOf("."));
      const file = await window.showSaveFilePicker({ suggestedName: name, types: [{ accept: { [type]: [ending] } }] });
      const out = await file.createWritable();
      await out.write(blob);
      await out.close();
      return file.name;
    } catch (error) {
      if (error.name === "AbortError") return undefined;
      if (error.name !== "SecurityError" && error.name !== "NotAllowedError") throw error;
    }
  }
  const link = document.createElement("a");
  link.href = URL.createObjectURL(blob);
  link.download = name;
  link.click();
  // Some browsers read the file only after the click is over.
  setTimeout(() => URL.revokeObjectURL(link.href), 60000);
  return "";
}

// What the device's own list of ways to hand on can do.
export function canShare() {
  return Boolean(navigator.share);
}

export async function share(title, asA, what) {
  try {
    await navigator.share({ title, [asA]: what });
  } catch (error) {
    if (error.name !== "AbortError") throw error;
  }
}

export async function copy(text) {
  await navigator.clipboard.writeText(text);
}

// A drawing as a picture of dots, two to each of its units across and down.
export async function dots(svg) {
  const image = new Image();
  image.src = URL.createObjectURL(new Blob([svg], { type: "image/svg+xml" }));
  await image.decode();
  const canvas = document.createElement("canvas");
  canvas.width = image.width * 2;
  canvas.height = image.height * 2;
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  URL.revokeObjectURL(image.src);
  const blob = await new Promise((done) => canvas.toBlob(done, "image/png"));
  return new Uint8Array(await blob.arrayBuffer());
}

// A price as people write it here, and three numbers from which the signs of decimals and thousands can be read.
export function money(amount, currency) {
  const whole = Number.isInteger(amount) ? { maximumFractionDigits: 0 } : {};
  return new Intl.NumberFormat(undefined, { style: "currency", currency, ...whole }).format(amount);
}

export function numerals() {
  // The figures are those of Europe, as they are in all else that the page writes.
  const here = new Intl.NumberFormat(undefined, { numberingSystem: "latn" });
  return [1.5, 1000, 10000].map((number) => here.format(number)).join("|");
}

// Calls back when the page has been drawn once more, or is about to be put away.
export function afterNextFrame(call) {
  let waits = true;
  const once = () => {
    if (!waits) return;
    waits = false;
    removeEventListener("pagehide", once);
    document.removeEventListener("visibilitychange", once);
    call();
  };
  addEventListener("pagehide", once);
  document.addEventListener("visibilitychange", once);
  requestAnimationFrame(() => setTimeout(once));
  // In a tab that is not seen no frame comes.
  setTimeout(once, 250);
}

// Calls back once, as soon as an element comes near to what is in sight.
export function whenInSight(element, call) {
  const eye = new IntersectionObserver(
    (found) => {
      if (!found.some((of) => of.isIntersecting)) return;
      eye.disconnect();
      call();
    },
    { rootMargin: "200px" },
  );
  eye.observe(element);
}

// A photo made small enough to be kept with the piece: at most 640 dots along its longer side and `most` characters.
export async function photo(file, most) {
  const image = await createImageBitmap(file);
  const scale = Math.min(1, 640 / Math.max(image.width, image.height));
  const canvas = document.createElement("canvas");
  canvas.width = Math.round(image.width * scale);
  canvas.height = Math.round(image.height * scale);
  canvas.getContext("2d").drawImage(image, 0, 0, canvas.width, canvas.height);
  image.close();
  for (const quality of [0.8, 0.6, 0.4, 0.2]) {
    const address = canvas.toDataURL("image/jpeg", quality);
    if (address.length <= most) return address;
  }
  throw new Error("it is too large");
}

// The width and height of the window, in heights of normal text.
export function windowInText() {
  const text = parseFloat(getComputedStyle(document.documentElement).fontSize);
  return new Float64Array([innerWidth / text, innerHeight / text]);
}

export function onResize(call) {
  addEventListener("resize", () => call());
}

// Whether a date begins with the month here, and whether the day has two halves of twelve hours.
export function dates() {
  const here = new Intl.DateTimeFormat(undefined, { dateStyle: "short", timeStyle: "short" });
  const parts = here.formatToParts(new Date()).map(({ type }) => type);
  return [parts.indexOf("month") < parts.indexOf("day"), Boolean(here.resolvedOptions().hour12)].map(Number).join("");
}
