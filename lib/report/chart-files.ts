import type { Words } from "@/lib/words/catalogue";
import type { ChartFiles } from "./basic-model";

/**
 * The ways out of a chart.
 *
 * @param href the address of the drawing (SVG) in the colours of a page, with its query
 * @param name of the picture, without its ending; it names no person
 */
export function buildChartFiles(words: Words, href: string, name: string): ChartFiles {
  return {
    links: [
      { href, label: words.say("chart-file.svg") },
      { href: `${href}&look=one-colour`, label: words.say("chart-file.svg-print") },
    ],
    picture: {
      href,
      fileName: `${name}.png`,
      label: words.say("chart-file.png"),
      failed: words.say("chart-file.png.failed"),
    },
  };
}
