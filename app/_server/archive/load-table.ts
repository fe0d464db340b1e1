import { randomUUID } from "node:crypto";
import { notFound } from "next/navigation";
import { buildProvedTable } from "@/lib/report/build-proved-table";
import { buildTableCsv, findTable } from "@/lib/report/table-downloads";
import { loadAcademyPage } from "../academy/load-academy";
import { loadSpread } from "../academy/load-spread";
import { loadConsent } from "../consent/load-consent";
import { csvResponse } from "../door/download";
import { loadLibrary, loadLibraryDrill } from "../drill/library-desk";
import { loadComparedDrills } from "../drill/load-compared";
import { loadDrillSeasons } from "../drill/load-drill-seasons";
import { loadFamilyLinks } from "../family/load-family-links";
import { noteLookAtMany, requireStudent, requireViewer } from "../gate";
import { loadGoalsPage } from "../goals/goal-desk";
import { loadOwningPage } from "../goals/owning-desk";
import { loadKeys } from "../import/load-keys";
import { loadPastImport } from "../import/past-import";
import { loadPastImports } from "../import/past-imports";
import { loadKeeping } from "../keeping/load-keeping";
import { loadDuePage } from "../plan/load-due";
import { loadPlan } from "../plan/load-plan";
import { loadReaderError, loadRereads } from "../reread/load-rereads";
import { loadRoster } from "../roster/load-roster";
import { loadDecides } from "../season/load-decides";
import { loadDrillPage, loadDrills } from "../season/load-drills";
import { loadEvents } from "../season/load-events";
import { loadFundamental } from "../season/load-fundamental";
import { loadKnown } from "../season/load-known";
import { loadPriority } from "../season/load-priority";
import { loadReadBacks } from "../season/load-read-back";
import { loadReview } from "../season/load-review";
import { loadSeason } from "../season/load-season";
import { loadPractice } from "../season/practice-desk";
import { loadSessionPage } from "../session/load-history";
import { loadNoteCodings } from "../session/note-codings";
import { loadClubsPage } from "../settings/club-desk";
import { loadDefinition, loadDefinitions } from "../settings/definition-desk";
import { loadReport } from "./load-report";
import { PAGES_WITH_TABLES, type PageWithTables } from "./table-links";

type Which = (name: string) => string | undefined;

const LOADERS: Readonly<Record<PageWithTables, (which: Which) => Promise<unknown>>> = {
  roster: async () => {
    const viewer = await requireViewer("GET /api/tables roster");
    const { proved } = await loadRoster(viewer, { sort: undefined, page: undefined });
    // Each row leads to the student whose change it tells of.
    const ids = proved.rows.map(({ href }) => decodeURIComponent(href.split("/")[2] ?? ""));
    noteLookAtMany(viewer, "GET /api/tables roster", [...new Set(ids)]);
    return { proved: buildProvedTable(viewer.words, proved) };
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
  consent: async (which) => loadConsent(await requireStudent("GET /api/tables consent", which("student") ?? "")),
  "family-links": async (which) =>
    loadFamilyLinks(await requireStudent("GET /api/tables family-links", which("student") ?? ""), randomUUID(), {}),
  known: async (which) =>
    loadKnown(await requireStudent("GET /api/tables known", which("student") ?? ""), {
      on: which("on"),
      club: which("club"),
      fundamental: which("fundamental"),
    }),
  "read-backs": async (which) =>
    loadReadBacks(await requireStudent("GET /api/tables read-backs", which("student") ?? ""), {}).page,
  goals: async (which) =>
    loadGoalsPage(await requireStudent("GET /api/tables goals", which("student") ?? ""), {
      fundamental: which("fundamental"),
      club: which("club"),
    }),
  "academy-goals": async (which) =>
    loadGoalsPage(await requireViewer("GET /api/tables academy-goals"), {
      fundamental: which("fundamental"),
      club: which("club"),
    }),
  owning: async () => loadOwningPage(await requireViewer("GET /api/tables owning")),
  "past-imports": async () => loadPastImports(await requireViewer("GET /api/tables past-imports")),
  "past-import": async (which) =>
    loadPastImport(await requireViewer("GET /api/tables past-import"), which("batch") ?? "", undefined),
  keys: async () => loadKeys(await requireViewer("GET /api/tables keys"), {}),
  priority: async (which) =>
    (
      await loadPriority(await requireStudent("GET /api/tables priority", which("student") ?? ""), {
        club: which("club"),
      })
    ).page,
  drills: async (which) => loadDrills(await requireStudent("GET /api/tables drills", which("student") ?? "")),
  drill: async (which) =>
    loadDrillPage(await requireStudent("GET /api/tables drill", which("student") ?? ""), which("drill") ?? ""),
  practice: async (which) =>
    loadPractice(await requireStudent("GET /api/tables practice", which("student") ?? ""), {}).page,
  plan: async (which) =>
    (await loadPlan(await requireStudent("GET /api/tables plan", which("student") ?? ""), { club: which("club") }))
      .page,
  review: async (which) =>
    loadReview(await requireStudent("GET /api/tables review", which("student") ?? ""), which("club")),
  "compared-drills": async (which) =>
    loadComparedDrills(await requireViewer("GET /api/tables compared-drills"), {
      for: which("for"),
      club: which("club"),
      of: which("group"),
    }),
  "drill-seasons": async (which) =>
    loadDrillSeasons(await requireViewer("GET /api/tables drill-seasons"), which("drill") ?? "", which("club")),
  library: async () => loadLibrary(await requireViewer("GET /api/tables library")),
  "library-drill": async (which) =>
    loadLibraryDrill(await requireViewer("GET /api/tables library-drill"), which("drill") ?? ""),
  definitions: async () => loadDefinitions(await requireViewer("GET /api/tables definitions")),
  definition: async (which) =>
    loadDefinition(await requireViewer("GET /api/tables definition"), which("fundamental") ?? ""),
  academy: async (which) => loadAcademyPage(await requireViewer("GET /api/tables academy"), { of: which("group") }),
  spread: async (which) =>
    loadSpread(await requireViewer("GET /api/tables spread"), which("fundamental") ?? "", { of: which("group") }),
  due: async () => loadDuePage(await requireViewer("GET /api/tables due")),
  "note-codings": async () => loadNoteCodings(await requireViewer("GET /api/tables note-codings")),
  keeping: async () => loadKeeping(await requireViewer("GET /api/tables keeping"), {}),
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
