import { createHash } from "node:crypto";

/**
 * Takes out of the browser what a phone kept without signal for a page that opens no more, and says what it was: day, minutes and
 * balls, as `practice-store.ts` keeps them, and that a yes to pain reached nobody. Which page it is stands in the address, so that the script, and with it the answer, is
 * the same whatever became of a link.
 */
export const FORGET_KEPT = `(() => {
  const id = /^\\/(?:api\\/)?family\\/([\\w-]+)/.exec(location.pathname)?.[1];
  const box = document.getElementById("kept");
  const pain = document.getElementById("kept-pain");
  const said = [];
  try {
    for (const name of Object.keys(localStorage).filter((each) => each.startsWith("proofband-practice " + id + " "))) {
      if (name.endsWith(" ask")) pain.hidden = false;
      else try {
        const { day, minutes, balls } = JSON.parse(localStorage.getItem(name));
        const counts = [minutes && box.dataset.minutes.replace("{minutes}", minutes), balls && box.dataset.balls.replace("{balls}", balls)];
        said.push(day + ": " + counts.filter(Boolean).join(", "));
      } catch {}
      localStorage.removeItem(name);
    }
  } catch {}
  if (said.length > 0) {
    box.textContent = box.textContent.replace("{said}", said.sort().join("; "));
    box.hidden = false;
  }
})();`;

/** By which the policy lets this script run, and no other one that stands in a page. */
export const FORGET_KEPT_HASH = `'sha256-${createHash("sha256").update(FORGET_KEPT).digest("base64")}'`;
