/** A path of our own, with what it asks for; another host may hide behind two strokes, or behind one of them turned over. */
export function ownPath(text: string, otherwise = "/record"): string {
  return /^\/(?![/\\])[\w\-./%]*(?:\?[\w\-.%=&]*)?$/.test(text) ? text : otherwise;
}
