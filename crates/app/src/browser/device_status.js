// What device_status.rs says.

let tell;
const worker = navigator.serviceWorker;
const quiet = () => {};

export function start(heard) {
  tell = heard;
  storage("persisted");
  try {
    const time = Number(localStorage.getItem("coatwright saved"));
    if (time) tell(4, time);
  } catch {}
  if (!worker) return;
  let known = worker.controller;
  if (known) tell(0, 0);
  worker.oncontrollerchange = () => {
    if (known) tell(1, 0);
    known = true;
  };
  worker.register("service-worker.js").then(watch, quiet);
}

function watch(registration) {
  const look = () => {
    const { installing, waiting, active } = registration;
    if (installing) installing.onstatechange = look;
    if (active) tell(waiting ? 1 : 0, 0);
  };
  registration.onupdatefound = look;
  look();
  const check = () => document.hidden || registration.update().catch(quiet);
  document.onvisibilitychange = check;
  setInterval(check, 3_600_000);
}

export async function take() {
  const anew = () => location.reload();
  worker.oncontrollerchange = anew;
  const waiting = (await worker.getRegistration())?.waiting;
  if (waiting) waiting.postMessage("take");
  else anew();
}

export async function storage(question) {
  try {
    tell(2, Number(await navigator.storage[question]()));
    const { usage, quota } = await navigator.storage.estimate();
    tell(3, usage / quota);
  } catch {}
}

export function saved() {
  const time = Date.now();
  tell(4, time);
  try {
    localStorage.setItem("coatwright saved", time);
  } catch {}
}
