import type { FamilyPage, FamilyPart, FamilyTold } from "@/lib/report/family-model";
import { Glyph } from "../glyph/glyph";
import styles from "./family.module.css";
import { Filming } from "./filming";
import { Log } from "./log";
import { Milestones, Numbers, Strips } from "./look";
import { Picture } from "./picture";
import { Press } from "./press";

function Lines({ part }: { readonly part: FamilyPart }) {
  return (
    <>
      <h2>{part.heading}</h2>
      <ul className={styles.lines}>
        {part.lines.map((line) => (
          <li key={line}>{line}</li>
        ))}
      </ul>
    </>
  );
}

function Piece({ part }: { readonly part: FamilyPart | null }) {
  return part === null ? null : (
    <section className={styles.part}>
      <Lines part={part} />
    </section>
  );
}

function Told({ told }: { readonly told: readonly FamilyTold[] }) {
  return (
    <ul className={styles.told}>
      {told.map(({ glyph, line }) => (
        <li key={line}>
          <span className={styles.glyph}>{glyph === null ? null : <Glyph glyph={glyph} size={20} />}</span>
          <p>{line}</p>
        </li>
      ))}
    </ul>
  );
}

function Stop({ stop }: { readonly stop: NonNullable<FamilyPage["stop"]> }) {
  return (
    <section className={styles.stop}>
      <Lines part={stop} />
      {stop.over === null ? null : <Press press={stop.over} look="do" />}
    </section>
  );
}

/** What else is on file, for whoever reads on. */
function Rest({ model }: { readonly model: FamilyPage }) {
  const { ask, about, look, more } = model;
  return (
    <>
      {look.strips === null && more.length === 0 ? null : (
        <section className={styles.part}>
          {look.strips === null ? null : <Strips model={look.strips} />}
          <ul className={styles.lines}>
            {more.map((line) => (
              <li key={line}>{line}</li>
            ))}
          </ul>
        </section>
      )}
      {look.milestones === null ? null : (
        <section className={styles.part}>
          <Milestones model={look.milestones} />
        </section>
      )}
      {look.numbers === null ? null : (
        <section className={styles.part}>
          <Numbers model={look.numbers} />
        </section>
      )}
      <Piece part={model.consent} />
      <section className={styles.part}>
        <Lines part={ask} />
        {ask.presses.map((press) => (
          <Press key={press.label} press={press} look="say" />
        ))}
      </section>
      <section className={styles.part}>
        <Lines part={about} />
        <ul className={styles.days}>
          {about.opened.map((at) => (
            <li key={at}>{at}</li>
          ))}
        </ul>
      </section>
    </>
  );
}

/** What a family reads: one column, in the order in which it helps a child, and nothing that needs a script. */
export function Family({ model }: { readonly model: FamilyPage }) {
  const { stop, look } = model;
  return (
    <div className={styles.page}>
      <header className={styles.head}>
        <h1>{model.title}</h1>
        {model.seen === "" ? null : <p className={styles.seen}>{model.seen}</p>}
        {model.notice === "" ? null : (
          <p role="status" className={styles.notice}>
            {model.notice}
          </p>
        )}
      </header>
      {stop === null ? null : <Stop stop={stop} />}
      <section className={styles.first}>
        <Lines part={model.good} />
        <Told told={model.told} />
      </section>
      {look.picture === null ? null : (
        <section className={styles.part}>
          <Picture model={look.picture} />
        </section>
      )}
      {model.task === null ? null : (
        <section className={styles.task} data-task="">
          <Lines part={model.task} />
        </section>
      )}
      <section className={styles.part}>
        <Log practice={model.practice} />
      </section>
      {model.filming === null ? null : (
        <section className={styles.part}>
          <Filming model={model.filming} />
        </section>
      )}
      {stop === null ? <Piece part={model.care} /> : null}
      <Rest model={model} />
    </div>
  );
}
