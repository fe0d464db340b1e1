import type { ImportPage } from "@/lib/report/form-model";
import type { Words } from "@/lib/words/catalogue";

/** The import page before a file is there. */
export function buildUploadPage(words: Words, error: string): ImportPage {
  return {
    title: words.say("import-page.title"),
    lede: words.say("import-page.lede"),
    upload: {
      action: "/api/import",
      fileLabel: words.say("import-page.file"),
      hint: words.say("import-page.hint"),
      submit: words.say("import-page.read"),
      error,
      paste: {
        label: words.say("import-page.paste"),
        hint: words.say("import-page.paste.hint"),
        submit: words.say("import-page.paste.read"),
      },
      samples: {
        heading: words.say("import-page.samples"),
        links: [
          ["season-long", "season-long.csv"],
          ["season-wide", "season-wide.csv"],
          ["season-workbook", "season.xlsx"],
          ["season-json", "season.json"],
          ["deliberately-bad", "deliberately-bad.csv"],
        ].map(([name, file]) => ({ href: `/api/samples/${file}`, label: words.say(`import-page.sample.${name}`) })),
      },
      format: {
        heading: words.say("import-page.format"),
        lines: ["long", "wide", "workbook", "json", "columns", "signs", "camera", "door"].map((line) =>
          words.say(`import-page.format.${line}`),
        ),
      },
    },
    preview: null,
    progress: null,
    done: null,
  };
}
