import Link from "next/link";
import type { ChainEntry, ChainGroup, SeasonFolds } from "@/lib/report/season-model";
import { Facts } from "../facts/facts";
import { Glyph, Verdict } from "../glyph/glyph";
import { SmallChart } from "../small-chart/small-chart";
import { drawStrip } from "../strip/draw-strip";
import { Strip } from "../strip/strip";
import styles from "./chain.module.css";

type Measured = Extract<ChainEntry, { kind: "measured" }>;

/** What opens a row on a phone: its chart in the height of a line. Elsewhere the chart itself is there. */
function Shut({ entry, label }: { readonly entry: Measured; readonly label: string }) {
  const { strip, row } = entry;
  const isProved = row.glyph !== "steady" && row.glyph !== "open";
  return (
    <summary className={styles.shut}>
      <span className="said">
        {label} {row.name}
      </span>
      <span className={styles.strip}>
        <Strip drawn={drawStrip(strip, 94, isProved ? "shape" : "level")} label={strip.summary} />
        {isProved ? (
          <span className={styles.shape}>
            <Glyph glyph={row.glyph} size={16} />
          </span>
        ) : null}
      </span>
    </summary>
  );
}

function Row({ entry, folds }: { readonly entry: Measured; readonly folds: SeasonFolds }) {
  const { row, stateWord, short } = entry;
  const isInHand = row.place === "in-hand";
  const rest = (
    <>
      <p className={styles.verdict}>
        <Verdict glyph={row.glyph} word={row.word} size={16} />
      </p>
      <p className={styles.text}>{row.text}</p>
      <div className={styles.chart}>
        <SmallChart chart={row.chart} />
      </div>
      <div className={styles.facts}>
        <Facts facts={row.facts} arrangement="list" />
      </div>
    </>
  );
  return (
    <li className={styles.row} data-place={row.place} data-folds={isInHand ? "no" : "yes"}>
      <div className={styles.line}>
        <h3>
          <Link prefetch={false} href={row.href}>
            {row.name}
          </Link>
        </h3>
        <p>
          <strong>{stateWord}</strong> · {short}
        </p>
      </div>
      {isInHand ? (
        rest
      ) : (
        <details className={styles.fold}>
          <Shut entry={entry} label={folds.chart} />
          <div className={styles.body}>{rest}</div>
        </details>
      )}
    </li>
  );
}

function Unmeasured(props: {
  readonly entry: Extract<ChainEntry, { kind: "unmeasured" }>;
  readonly folds: SeasonFolds;
}) {
  const { entry, folds } = props;
  const text = <p className={styles.missing}>{entry.text}</p>;
  return (
    <li className={styles.row} data-place={entry.place} data-folds={entry.place === "in-hand" ? "no" : "yes"}>
      <div className={`${styles.line} ${styles.bare}`}>
        <h3>{entry.name}</h3>
        <p>
          <strong>{entry.stateWord}</strong>
        </p>
      </div>
      {entry.place === "in-hand" ? (
        text
      ) : (
        <details className={styles.fold}>
          <summary className={styles.shut}>
            <span className="said">
              {folds.unmeasured} {entry.name}
            </span>
          </summary>
          <div className={styles.body}>{text}</div>
        </details>
      )}
    </li>
  );
}

/** The chain of fundamentals, top to bottom in the order of work; on a phone a line each, but for the one in hand. */
export function Chain({ chain, folds }: { readonly chain: readonly ChainGroup[]; readonly folds: SeasonFolds }) {
  return chain.map((group) => (
    <section key={group.label} aria-label={group.label}>
      <p className={styles.group}>{group.label}</p>
      <ol className={styles.chain}>
        {group.entries.map((entry) =>
          entry.kind === "measured" ? (
            <Row key={entry.row.fundamentalId} entry={entry} folds={folds} />
          ) : (
            <Unmeasured key={entry.fundamentalId} entry={entry} folds={folds} />
          ),
        )}
      </ol>
    </section>
  ));
}
