import { Fragment, isValidElement, type ReactNode } from "react";

/** Attributes of a drawing that keep their capitals; every other one is written with hyphens. */
const AS_WRITTEN = new Set(["viewBox", "patternUnits", "patternTransform", "preserveAspectRatio", "textLength"]);

// Signs that XML can't hold at all, however they are written.
const NOT_XML = /[^\t\n\r\u0020-\uD7FF\uE000-\uFFFD\u{10000}-\u{10FFFF}]/gu;

function escapeText(text: string): string {
  return text.replace(NOT_XML, "\uFFFD").replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;");
}

function escapeValue(text: string): string {
  return escapeText(text).replaceAll('"', "&quot;").replaceAll("\n", "&#10;").replaceAll("\t", "&#9;");
}

function attributeName(name: string): string {
  if (name === "className") return "class";
  return AS_WRITTEN.has(name) ? name : name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
}

function attributes(props: Readonly<Record<string, unknown>>): string {
  return Object.entries(props)
    .filter(([name, value]) => name !== "children" && value !== undefined && value !== null && value !== false)
    .map(([name, value]) => ` ${attributeName(name)}="${escapeValue(String(value))}"`)
    .join("");
}

/**
 * Writes markup out as XML: for drawings, whose parts are functions of their props alone.
 *
 * @param node elements, text, numbers and lists of them
 * @throws TypeError for a part that is no function of its props
 */
export function writeMarkup(node: ReactNode): string {
  if (node === null || node === undefined || typeof node === "boolean") return "";
  if (typeof node === "string" || typeof node === "number") return escapeText(String(node));
  if (Array.isArray(node)) return node.map((item) => writeMarkup(item as ReactNode)).join("");
  if (!isValidElement<Readonly<Record<string, unknown>>>(node)) throw new TypeError("not markup");
  const { type, props } = node;
  if (type === Fragment) return writeMarkup(props.children as ReactNode);
  if (typeof type === "function") return writeMarkup((type as (props: unknown) => ReactNode)(props));
  if (typeof type !== "string") throw new TypeError("not a part of a drawing");
  return `<${type}${attributes(props)}>${writeMarkup(props.children as ReactNode)}</${type}>`;
}
