/** The worker: registered at every start; a new version waits until it is asked for, or for the next cold start. */

import { noteFault } from "./errors.js";
import { loadRest } from "./tools.js";

/** Whether this page asked for the new version: only then does it load again when another worker takes over. */
let asked = false;

/** Register the worker, and show the button when a version waits. @param {Promise<unknown>} opened until the page answers */
export async function keepOffline(opened) {
  const workers = navigator.serviceWorker;
  if (!workers) return; // plain http: the pages still work while the server is there
  workers.addEventListener("controllerchange", () => (asked ? openAnew() : mark(opened)));
  try {
    const registration = await workers.register("/sw.js", { updateViaCache: "none" });
    watch(registration);
    document.addEventListener("visibilitychange", () => !document.hidden && registration.update().catch(() => {}));
    await workers.ready;
    await mark(opened);
  } catch (error) {
    noteFault(error);
    console.warn(error); // the server is gone, or the certificate is not trusted: what was kept still answers
  }
}

/** Load again; what a page does as it is left is done first, so that its address says all that was typed. */
function openAnew() {
  dispatchEvent(new Event("pagehide"));
  location.reload();
}

/** Say on the page that it opens without a server: a controller is set and the start page is kept. @param {Promise<unknown>} opened */
async function mark(opened) {
  const kept = navigator.serviceWorker.controller && (await caches.match("/shell/home"));
  document.documentElement.toggleAttribute("data-offline", Boolean(kept));
  if (!kept) return;
  await opened; // first things first
  await loadRest();
}

/** @param {ServiceWorkerRegistration} registration */
function watch(registration) {
  const button = document.getElementById("update");
  button?.addEventListener("click", () => {
    asked = true;
    registration.waiting?.postMessage("take over");
  });
  const offer = () => {
    if (button) button.hidden = !(registration.waiting && navigator.serviceWorker.controller);
  };
  registration.addEventListener("updatefound", () => registration.installing?.addEventListener("statechange", offer));
  offer();
}
