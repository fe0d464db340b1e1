import type { FamilyPress } from "@/lib/report/family-press-model";
import { HiddenFields } from "../form/hidden-fields";
import styles from "./family.module.css";

/** A button that sends what travels unseen. */
export function Press({ press, look }: { readonly press: FamilyPress; readonly look: "do" | "say" }) {
  return (
    <form action={press.action} method="post" className={styles.press}>
      <HiddenFields fields={press.hidden} />
      <button type="submit" className={look}>
        {press.label}
      </button>
    </form>
  );
}
