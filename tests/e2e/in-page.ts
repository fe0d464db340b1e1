/*
 * What is looked for in a page as it stands. Each of these is handed to the browser as it is, so it names nothing outside
 * itself; each tells what is wrong, nothing where nothing is.
 */

/** X3: the page itself never scrolls sideways; a part of it may, where it holds a table or a drawing. */
export function sidewaysFaults(): string[] {
  const named = (at: Element): string =>
    `<${at.tagName.toLowerCase()} class="${at.getAttribute("class") ?? ""}"> ${(at.textContent ?? "").trim().slice(0, 40)}`;
  const root = document.documentElement;
  const scrolls = (at: Element): boolean => /auto|scroll/.test(getComputedStyle(at).overflowX);
  const faults: string[] = [];
  const all = [...document.body.querySelectorAll("*")];
  if (root.scrollWidth > root.clientWidth) {
    const inside = (at: Element): boolean => {
      for (let up = at.parentElement; up && up !== document.body; up = up.parentElement)
        if (getComputedStyle(up).overflowX !== "visible") return true;
      return false;
    };
    const wide = all.filter((at) => at.getBoundingClientRect().right > root.clientWidth + 1 && !inside(at));
    faults.push(`${root.scrollWidth} px wide: ${wide.slice(-3).map(named).join(" | ")}`);
  }
  for (const at of all)
    if (scrolls(at) && at.scrollWidth > at.clientWidth + 1)
      if (!at.matches("textarea, input, select, pre, code") && !at.querySelector("table, svg"))
        faults.push(`scrolls sideways: ${named(at)}`);
  return faults;
}

/** X3: no text is cut off. */
export function clippedFaults(): string[] {
  const faults: string[] = [];
  for (const at of document.body.querySelectorAll("*")) {
    const { overflowX, overflowY } = getComputedStyle(at);
    if (!/hidden|clip/.test(overflowX + overflowY) || at.closest("svg") || !(at.textContent ?? "").trim()) continue;
    // Said to a screen reader alone.
    if (at.clientWidth <= 1 || at.closest(".said") || !at.checkVisibility()) continue;
    const isCut =
      (/hidden|clip/.test(overflowX) && at.scrollWidth > at.clientWidth + 1) ||
      (/hidden|clip/.test(overflowY) && at.scrollHeight > at.clientHeight + 1);
    if (isCut) faults.push(`cut off: <${at.tagName.toLowerCase()}> ${(at.textContent ?? "").trim().slice(0, 60)}`);
  }
  return faults;
}

/** X4: nothing moves for whoever asked that nothing does. */
export function movingFaults(): string[] {
  const faults = document.getAnimations().map((each) => `moves: ${each.constructor.name}`);
  for (const at of [document.documentElement, ...document.body.querySelectorAll("*")])
    for (const part of [undefined, "::before", "::after"]) {
      const { animationName, transitionDuration, scrollBehavior } = getComputedStyle(at, part);
      const isStill =
        animationName === "none" &&
        scrollBehavior !== "smooth" &&
        transitionDuration.split(",").every((each) => Number.parseFloat(each) === 0);
      if (!isStill) faults.push(`would move: <${at.tagName.toLowerCase()} class="${at.getAttribute("class") ?? ""}">`);
    }
  for (const at of document.querySelectorAll("marquee, video[autoplay], animate, animateTransform, animateMotion"))
    faults.push(`moves: <${at.tagName.toLowerCase()}>`);
  return [...new Set(faults)];
}

/** X4: printed in one colour nothing that is told by a colour is left, since there is none. */
export function colourFaults(): string[] {
  const parts = (value: string): number[] => {
    const [r = 0, g = 0, b = 0, alpha = 1] = (value.match(/[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
    return /^color\(/.test(value) ? [r * 255, g * 255, b * 255, alpha] : [r, g, b, alpha];
  };
  const isGrey = (value: string): boolean => {
    if (!/^(rgb|color)/.test(value)) return true;
    const [r = 0, g = 0, b = 0, alpha = 1] = parts(value);
    return alpha === 0 || Math.max(r, g, b) - Math.min(r, g, b) <= 12;
  };
  const faults = new Set<string>();
  for (const at of document.body.querySelectorAll("*")) {
    if (!at.checkVisibility()) continue;
    const style = getComputedStyle(at);
    const drawn = at.closest("svg") !== null;
    const text = [...at.childNodes].some((each) => each.nodeType === 3 && (each.textContent ?? "").trim() !== "");
    const shown: [string, string][] = [["background", style.backgroundColor]];
    if (text && !drawn) shown.push(["text", style.color]);
    if (drawn && !at.matches("svg, g, defs, defs *, title, desc"))
      shown.push(["fill", style.fill], ["stroke", style.stroke]);
    for (const side of ["Top", "Right", "Bottom", "Left"] as const)
      if (style[`border${side}Width`] !== "0px") shown.push(["border", style[`border${side}Color`]]);
    for (const [what, value] of shown)
      if (!isGrey(value))
        faults.add(`${what} ${value}: <${at.tagName.toLowerCase()} class="${at.getAttribute("class") ?? ""}">`);
  }
  return [...faults];
}

/** What of a drawing can be seen: its shapes by place in the document, with what marks them off. */
interface Shape {
  readonly at: string;
  readonly hue: string;
  readonly geometry: string;
  readonly seen: "seen" | "unseen";
}

/** X4: the shapes of every drawing that is shown, and whether they stand out from what lies behind. */
export function drawnShapes(): Shape[] {
  const probe = document.body.appendChild(document.createElement("i"));
  probe.style.background = "Canvas";
  probe.style.setProperty("forced-color-adjust", "none");
  const forced = matchMedia("(forced-colors: active)").matches;
  const behind = getComputedStyle(forced ? probe : document.documentElement).backgroundColor;
  probe.remove();
  const parts = (value: string): number[] => {
    const [r = 0, g = 0, b = 0, alpha = 1] = (value.match(/[\d.]+(?:e-?\d+)?/g) ?? []).map(Number);
    return /^color\(/.test(value) ? [r * 255, g * 255, b * 255, alpha] : [r, g, b, alpha];
  };
  const luminance = (value: string): number => {
    const [r = 0, g = 0, b = 0] = parts(value).map((each) => {
      const share = each / 255;
      return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
    });
    return 0.2126 * r + 0.7152 * g + 0.0722 * b;
  };
  const contrast = (value: string): number => {
    if (/^url/.test(value)) return 21;
    if (!/^(rgb|color)/.test(value) || (parts(value)[3] ?? 1) < 0.05) return 1;
    const [one, other] = [luminance(value), luminance(behind)];
    return (Math.max(one, other) + 0.05) / (Math.min(one, other) + 0.05);
  };
  const hueOf = (value: string): string => {
    if (!/^(rgb|color)/.test(value)) return "";
    const [r = 0, g = 0, b = 0, alpha = 1] = parts(value);
    return alpha < 0.05 || Math.max(r, g, b) - Math.min(r, g, b) <= 24 ? "" : value;
  };
  const shapes: Shape[] = [];
  const all = document.querySelectorAll("svg :is(path, circle, rect, line, polygon, polyline, ellipse)");
  [...all].forEach((at, place) => {
    if (!at.checkVisibility() || at.closest("defs, clipPath, pattern")) return;
    const style = getComputedStyle(at);
    const box = (at as SVGGraphicsElement).getBBox();
    if (box.width === 0 && box.height === 0) return;
    const strokes = style.stroke !== "none" && Number.parseFloat(style.strokeWidth) > 0;
    const seen = Math.max(style.fill === "none" ? 1 : contrast(style.fill), strokes ? contrast(style.stroke) : 1);
    // Where a shape lies is no mark of it; its turns are.
    const line = at as SVGGeometryElement;
    const length = line.getTotalLength();
    const turns = Array.from({ length: 9 }, (_, step) => line.getPointAtLength((length * step) / 9))
      .map(
        ({ x, y }) => `${((x - box.x) / (box.width || 1)).toFixed(1)},${((y - box.y) / (box.height || 1)).toFixed(1)}`,
      )
      .join(" ");
    const size = `${Math.round(box.width)}x${Math.round(box.height)}`;
    const filled =
      style.fill === "none" || (parts(style.fill)[3] ?? 1) === 0
        ? "hollow"
        : /^url/.test(style.fill)
          ? "hatched"
          : "filled";
    shapes.push({
      at: `${place} <${at.tagName} class="${at.getAttribute("class") ?? ""}">`,
      hue: hueOf(style.fill) || hueOf(style.stroke),
      geometry: [
        at.tagName,
        size,
        turns,
        filled,
        style.strokeDasharray,
        Math.round(Number.parseFloat(style.strokeWidth)),
      ].join(" "),
      seen: seen >= 1.2 ? "seen" : "unseen",
    });
  });
  return shapes;
}

/** X2: what is read out of each drawing that is shown: its name, or nothing where it has none. */
export function drawingNames(): { readonly at: string; readonly name: string }[] {
  const textOf = (ids: string | null): string =>
    (ids ?? "")
      .split(/\s+/)
      .map((id) => (id === "" ? "" : (document.getElementById(id)?.textContent ?? "")))
      .join(" ");
  return [...document.querySelectorAll("main svg, main canvas, main img")]
    .filter((at) => at.checkVisibility({ visibilityProperty: true }) && !at.closest("[aria-hidden=true]"))
    .filter((at) => at.getAttribute("role") !== "presentation" && !at.parentElement?.closest("svg"))
    .map((at) => {
      const own = [...at.querySelectorAll(":scope > title, :scope > desc")].map((each) => each.textContent ?? "");
      const said = [
        at.getAttribute("aria-label") ?? at.getAttribute("alt") ?? "",
        textOf(at.getAttribute("aria-labelledby")),
      ];
      const isDrawing = /^(img|application)$/.test(at.getAttribute("role") ?? "") || at.tagName === "IMG";
      const name = isDrawing ? [...said, ...own].join(" ").trim() : "";
      return { at: `<${at.tagName.toLowerCase()} class="${at.getAttribute("class") ?? ""}">`, name };
    });
}

/** X2: whatever is marked wrong says why, in words that are tied to it; and the page says so at once. */
export function errorFaults(): string[] {
  const wrong = [...document.querySelectorAll('main [aria-invalid="true"]')];
  const faults = wrong
    .filter((at) => {
      const ids = `${at.getAttribute("aria-describedby") ?? ""} ${at.getAttribute("aria-errormessage") ?? ""}`.trim();
      const said = ids.split(/\s+/).map((id) => (id === "" ? null : document.getElementById(id)));
      return !said.some((each) => each?.checkVisibility() && (each.textContent ?? "").trim().length > 3);
    })
    .map((at) => `says no reason: ${at.getAttribute("name")}`);
  if (wrong.length === 0) faults.push("nothing is marked wrong");
  if (document.querySelectorAll("main [role=alert]").length === 0) faults.push("nothing is announced");
  return faults;
}

/** X6: nothing is to be dragged alone, and a password may be pasted and filled in by a program. */
export function handFaults(): string[] {
  const faults = [...document.querySelectorAll('[draggable="true"]')].map((at) => `is dragged: ${at.tagName}`);
  for (const at of document.querySelectorAll<HTMLInputElement>(
    'input[type="password"], input[autocomplete="one-time-code"]',
  )) {
    const event = new ClipboardEvent("paste", { bubbles: true, cancelable: true });
    if (!at.dispatchEvent(event)) faults.push(`takes no paste: ${at.name}`);
    if (!/current-password|new-password|one-time-code/.test(at.autocomplete)) faults.push(`names no kind: ${at.name}`);
  }
  const asked = [...document.querySelectorAll<HTMLFormElement>("main form")].flatMap((form) => {
    const fields = [
      ...form.querySelectorAll<HTMLInputElement>("input:not([type=hidden], [type=radio], [type=checkbox])"),
    ];
    const kinds = fields.map((at) => at.autocomplete).filter((kind) => /password|email|^name$/.test(kind));
    return kinds.filter((kind, at) => kinds.indexOf(kind) !== at).map((kind) => `asked twice: ${kind}`);
  });
  return [...faults, ...asked];
}
