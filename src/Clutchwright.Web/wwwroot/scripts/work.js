// A page that waits for an answer sends for it and then shows it. Leaving the page stops the work.
export async function waitForWork(place) {
  const leaving = new AbortController();
  window.addEventListener("pagehide", () => leaving.abort());
  const seconds = place.querySelector("[data-seconds]");
  const since = Date.now();
  const ticking = setInterval(() => {
    if (seconds) {
      seconds.textContent = `${Math.round((Date.now() - since) / 1000)} s`;
    }
  }, 1000);
  try {
    const answer = await fetch(place.dataset.work, { signal: leaving.signal });
    if (!answer.ok) {
      throw new Error(String(answer.status));
    }

    await answer.text();
    location.replace(place.dataset.then);
  } catch {
    if (!leaving.signal.aborted) {
      const status = place.querySelector("[role=status]");
      status.textContent = "The answer did not come. ";
      const again = document.createElement("a");
      again.href = place.dataset.then;
      again.textContent = "Try again";
      status.append(again);
      place.querySelector("progress")?.remove();
    }
  } finally {
    clearInterval(ticking);
  }
}
