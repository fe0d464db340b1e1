import type { RunningImport } from "@/lib/report/past-import-model";
import { PageHead, Part } from "../part/part";
import { KeepTelling } from "./keep-telling";
import styles from "./past-import.module.css";

/** An import on its way: how far it is, told anew; without scripts by a link. */
export function Running({
  model,
  stop,
}: {
  readonly model: RunningImport;
  readonly stop: (data: FormData) => Promise<void>;
}) {
  return (
    <>
      <PageHead title={model.title} />
      <Part margin={model.margin}>
        {model.ended === "yes" ? (
          <p className={styles.says}>{model.says}</p>
        ) : (
          <KeepTelling says={model.says} poll={model.poll} />
        )}
        {model.explains === "" ? null : <p>{model.explains}</p>}
        <div className={styles.ways}>
          <a href={model.again.href}>{model.again.label}</a>
          {model.stop === null ? null : (
            <form action={stop}>
              <input type="hidden" name="draftId" value={model.stop.draftId} />
              <button type="submit" className="say">
                {model.stop.label}
              </button>
            </form>
          )}
        </div>
      </Part>
    </>
  );
}
