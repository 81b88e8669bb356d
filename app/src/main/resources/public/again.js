// Asks for the bench until it answers again.

const ASK_AGAIN_MILLIS = 8000;

/** Calls back once, as soon as the bench answers. */
export function onceItAnswers(goOn) {
  const again = setInterval(async () => {
    if (await answers()) {
      clearInterval(again);
      goOn();
    }
  }, ASK_AGAIN_MILLIS);
}

/** Whether it answers now. */
export async function answers() {
  try {
    return (await fetch("/health", { signal: AbortSignal.timeout(4000) })).ok;
  } catch {
    return false;
  }
}
