import { notFound } from "next/navigation";
import { buildProvedTable } from "@/lib/report/build-proved-table";
import { buildTableCsv, findTable } from "@/lib/report/table-downloads";
import { csvResponse } from "../door/download";
import { requireStudent, requireViewer } from "../gate";
import { loadKeys } from "../import/load-keys";
import { loadPastImport } from "../import/past-import";
import { loadPastImports } from "../import/past-imports";
import { loadReaderError, loadRereads } from "../reread/load-rereads";
import { loadRoster } from "../roster/load-roster";
import { loadDecides } from "../season/load-decides";
import { loadDrills } from "../season/load-drills";
import { loadEvents } from "../season/load-events";
import { loadFundamental } from "../season/load-fundamental";
import { loadKnown } from "../season/load-known";
import { loadReadBacks } from "../season/load-read-back";
import { loadSeason } from "../season/load-season";
import { loadPractice } from "../season/practice-desk";
import { loadSessionPage } from "../session/load-history";
import { loadNoteCodings } from "../session/note-codings";
import { loadClubsPage } from "../settings/club-desk";
import { loadReport } from "./load-report";
import { PAGES_WITH_TABLES, type PageWithTables } from "./table-links";

type Which = (name: string) => string | undefined;

const LOADERS: Readonly<Record<PageWithTables, (which: Which) => Promise<unknown>>> = {
  roster: async () => {
    const viewer = await requireViewer("GET /api/tables roster");
    return {
      proved: buildProvedTable(viewer.words, (await loadRoster(viewer, { sort: undefined, page: undefined })).proved),
    };
  },
  report: async (which) =>
    loadReport(await requireStudent("GET /api/tables report", which("student") ?? ""), which("club")),
  season: async (which) =>
    loadSeason(await requireStudent("GET /api/tables season", which("student") ?? ""), which("club")),
  fundamental: async (which) =>
    loadFundamental(
      await requireStudent("GET /api/tables fundamental", which("student") ?? ""),
      which("fundamental") ?? "",
      which("club"),
    ),
  session: async (which) =>
    loadSessionPage(
      await requireStudent("GET /api/tables session", which("student") ?? ""),
      which("session") ?? "",
      undefined,
    ),
  events: async (which) =>
    loadEvents(await requireStudent("GET /api/tables events", which("student") ?? ""), "left-out"),
  known: async (which) =>
    loadKnown(await requireStudent("GET /api/tables known", which("student") ?? ""), {
      on: which("on"),
      club: which("club"),
      fundamental: which("fundamental"),
    }),
  "read-backs": async (which) =>
    loadReadBacks(await requireStudent("GET /api/tables read-backs", which("student") ?? ""), {}).page,
  "past-imports": async () => loadPastImports(await requireViewer("GET /api/tables past-imports")),
  "past-import": async (which) =>
    loadPastImport(await requireViewer("GET /api/tables past-import"), which("batch") ?? "", undefined),
  keys: async () => loadKeys(await requireViewer("GET /api/tables keys"), {}),
  drills: async (which) => loadDrills(await requireStudent("GET /api/tables drills", which("student") ?? "")),
  practice: async (which) =>
    loadPractice(await requireStudent("GET /api/tables practice", which("student") ?? ""), {}).page,
  "note-codings": async () => loadNoteCodings(await requireViewer("GET /api/tables note-codings")),
  decides: async () => loadDecides(await requireViewer("GET /api/tables decides")),
  clubs: async () => loadClubsPage(await requireViewer("GET /api/tables clubs")),
  rereads: async () => loadRereads(await requireViewer("GET /api/tables rereads")),
  "reader-error": async (which) =>
    loadReaderError(await requireViewer("GET /api/tables reader-error"), which("fundamental") ?? ""),
};

/** One table of a page as a file: the page is made as for the viewer, and the cells are its own. */
export async function downloadTable(asked: URLSearchParams): Promise<Response> {
  const of = PAGES_WITH_TABLES.find((page) => page === asked.get("of"));
  const place = /^\d{1,3}$/.test(asked.get("table") ?? "") ? Number(asked.get("table")) : -1;
  if (!of) notFound();
  const table = findTable(await LOADERS[of]((name) => asked.get(name) ?? undefined), place);
  if (!table) notFound();
  return csvResponse(`${of}-${place + 1}.csv`, buildTableCsv(table));
}
