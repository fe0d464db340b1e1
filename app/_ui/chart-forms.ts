/** The widths in which a season chart is drawn: each is shown at its own size or a little larger, so that words stay legible. */
export type ChartForm = "wide" | "laptop" | "page" | "tablet" | "phone";

/** Beside them the low drawing of a report, of which two stand on a sheet with their words. */
export type PaperForm = "paper";

/** What one width of the chart gives to its parts, in pixels. */
export interface FormSize {
  readonly width: number;
  readonly plotHeight: number;
  /** Whether levels and changes share one lane or stand in two. */
  readonly lane: "one" | "two";
  readonly dot: number;
  readonly tick: number;
  readonly tickOff: number;
}

export const FORM_SIZES: Readonly<Record<ChartForm | PaperForm, FormSize>> = {
  wide: { width: 1160, plotHeight: 376, lane: "one", dot: 4.5, tick: 8, tickOff: 12 },
  laptop: { width: 1000, plotHeight: 376, lane: "one", dot: 4.5, tick: 8, tickOff: 12 },
  page: { width: 700, plotHeight: 324, lane: "two", dot: 4.5, tick: 7, tickOff: 11 },
  paper: { width: 700, plotHeight: 150, lane: "two", dot: 4, tick: 6, tickOff: 10 },
  tablet: { width: 480, plotHeight: 288, lane: "two", dot: 4, tick: 5, tickOff: 9 },
  phone: { width: 326, plotHeight: 252, lane: "two", dot: 3.5, tick: 4, tickOff: 7 },
};

export const FORMS: readonly ChartForm[] = ["wide", "laptop", "page", "tablet", "phone"];

/** The widest drawing that fits; the sheet of styles beside the drawings chooses by the same widths. */
export function formFor(width: number): ChartForm {
  return FORMS.find((form) => FORM_SIZES[form].width <= width) ?? "phone";
}
