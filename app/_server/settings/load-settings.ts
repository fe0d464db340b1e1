import type { FormModel, TextPage } from "@/lib/report/form-model";
import { mayPass, type RowKey } from "../access/matrix";
import { loadAcademyTakeOut } from "../archive/load-take-out";
import { type AskedForm, requireDraftId } from "../draft/draft-forms";
import { loadLibraryDoor } from "../drill/library-desk";
import type { Viewer } from "../gate";
import { loadGoalsDoor } from "../goals/goal-desk";
import { loadOwningDoor } from "../goals/owning-desk";
import { loadKeysDoor } from "../import/load-keys";
import { loadRereadsDoor } from "../reread/load-rereads";
import { loadNotesDoor } from "../session/note-codings";
import { loadClubsDoor } from "./club-desk";
import { loadDefinitionsDoor } from "./definition-desk";
import { loadKeepingDoor } from "./keeping-desk";
import { loadSwitch } from "./load-switch";
import { loadSettingsForm } from "./settings-desk";

type Part = TextPage["parts"][number];

/** What leads on from the settings, by the row that whoever follows it must pass. */
const DOORS: readonly (readonly [RowKey, (viewer: Viewer) => Part])[] = [
  ["/settings/clubs", loadClubsDoor],
  ["/drills/library", loadLibraryDoor],
  ["/settings/fundamentals", loadDefinitionsDoor],
  ["/settings/goals", loadGoalsDoor],
  ["/settings/owning", loadOwningDoor],
  ["/settings/privacy", loadKeepingDoor],
  ["/rereads", loadRereadsDoor],
  ["/settings/keys", loadKeysDoor],
  ["/settings/notes", loadNotesDoor],
  ["GET /api/archive", loadAcademyTakeOut],
];

/** The settings page, as far as it is this viewer's. */
export interface SettingsPage {
  readonly heading: string;
  readonly lede: string;
  /** Null: the academy's settings are not theirs to change. */
  readonly form: FormModel | null;
  readonly parts: readonly Part[];
  readonly other: FormModel | null;
}

export async function loadSettings(viewer: Viewer, { draft, dropped }: AskedForm): Promise<SettingsPage> {
  const { words, roles } = viewer;
  const changes = mayPass("/settings submitSettings", roles);
  return {
    heading: words.say("settings.heading"),
    lede: words.say("settings.lede"),
    form: changes ? loadSettingsForm(viewer, requireDraftId("/settings", draft, dropped), dropped) : null,
    parts: DOORS.flatMap(([row, load]) => (mayPass(row, roles) ? [load(viewer)] : [])),
    other: await loadSwitch(viewer),
  };
}
