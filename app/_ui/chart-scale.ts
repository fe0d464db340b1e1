/** Maps a value of the model to a pixel; values beyond the range stop at its ends. */
export type PixelScale = (value: number) => number;

/** The pixels that a drawing gives to its data. */
export interface PlotBox {
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** A straight line from the range to the two pixels; a range without width lies in the middle between them. */
export function pixelScale(
  range: { readonly from: number; readonly to: number },
  start: number,
  end: number,
): PixelScale {
  const span = range.to - range.from;
  if (!(span > 0)) return () => (start + end) / 2;
  return (value) => {
    const part = Math.min(1, Math.max(0, (value - range.from) / span));
    return start * (1 - part) + end * part;
  };
}

/** A pixel as it is written into a drawing: a tenth of a pixel is finer than any screen shows. */
export function pixel(value: number): number {
  return Math.round(value * 10) / 10;
}
