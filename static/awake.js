// Keeps the screen awake while a drawer's page is looked at, where the browser can.
async function stayAwake() {
  if (document.visibilityState !== "visible" || !("wakeLock" in navigator)) return;
  await navigator.wakeLock.request("screen").catch(() => undefined);
}

document.addEventListener("visibilitychange", stayAwake);
stayAwake();
