/** Lets the server's thread answer others before long work goes on. */
export function breathe(): Promise<void> {
  return new Promise((resolve) => setImmediate(resolve));
}
