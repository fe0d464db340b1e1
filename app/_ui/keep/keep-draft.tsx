"use client";

import { useEffect, useRef, useState } from "react";
import type { KeepModel } from "@/lib/report/keep-model";
import { Both } from "./both";
import { findUnsent, forgetUnsent, type Stored } from "./browser-store";
import styles from "./keep.module.css";
import type { Keeping, Standing } from "./keeping";
import { lookUp, startKeeping } from "./start-keeping";

/** A page that is behind is made anew once, not again and again while another window types. */
const AGAIN = "proofband-made-anew";

async function catchUp(
  keep: KeepModel,
  form: HTMLFormElement,
  { state }: Keeping,
  tell: (standing: Standing) => void,
): Promise<void> {
  const again = sessionStorage.getItem(AGAIN);
  sessionStorage.removeItem(AGAIN);
  let untouched = true;
  form.addEventListener("input", () => (untouched = false), { once: true });
  const found = await lookUp(keep);
  if (!form.isConnected) return;
  if (found.kind === "saved") tell({ state: "saved", said: found.said, both: null });
  if (found.kind !== "behind" || !untouched || state() === "begun" || again === keep.draft) return;
  sessionStorage.setItem(AGAIN, keep.draft);
  // A press on a page that is about to be made anew would be lost unseen.
  form.inert = true;
  location.reload();
}

/** Back to this form; in another window, so that what isn’t kept yet stays in this one. */
function signInHref({ words, draft }: KeepModel): string {
  return `/sign-in?to=${encodeURIComponent(`${words.page}?draft=${draft}`)}`;
}

function hourOf(at: string): string {
  return new Intl.DateTimeFormat(document.documentElement.lang || "en", {
    dateStyle: "medium",
    timeStyle: "short",
    hourCycle: "h23",
  }).format(new Date(at));
}

/** What lies in this browser and was never sent. */
function Found({
  stored,
  keep,
  onTake,
  onDrop,
}: {
  readonly stored: Stored;
  readonly keep: KeepModel;
  readonly onTake: () => void;
  readonly onDrop: () => void;
}) {
  const { words } = keep;
  return (
    <p className={styles.found}>
      {words.found.replace("{at}", hourOf(stored.at))}{" "}
      {stored.draft === keep.draft ? (
        <button type="button" className="say" onClick={onTake}>
          {words.take}
        </button>
      ) : (
        <a href={`${words.page}?draft=${stored.draft}`}>{words.take}</a>
      )}{" "}
      <button type="button" className="say" onClick={onDrop}>
        {words.drop}
      </button>
    </p>
  );
}

function useKeeping(keep: KeepModel) {
  const place = useRef<HTMLDivElement>(null);
  const keeping = useRef<Keeping | null>(null);
  const [standing, setStanding] = useState<Standing>({
    state: keep.both === null ? "kept" : "changed",
    said: keep.said,
    both: keep.both,
  });
  const [found, setFound] = useState<readonly Stored[]>([]);
  useEffect(() => {
    const form = place.current?.closest("form");
    if (!form) return;
    setFound(findUnsent(keep));
    const started = startKeeping(form, keep, setStanding);
    keeping.current = started;
    void catchUp(keep, form, started, setStanding);
    return () => started.stop();
  }, [keep]);
  const put = async (values: ReadonlyMap<string, readonly string[]>, settles: string): Promise<void> => {
    await keeping.current?.put(values, settles);
  };
  return { place, standing, setStanding, found, setFound, put };
}

/** Keeps the form around it while somebody types, and says how that stands in one quiet line. */
export function KeepDraft({ keep }: { readonly keep: KeepModel }) {
  const { place, standing, setStanding, found, setFound, put } = useKeeping(keep);
  const { both } = standing;
  const { words } = keep;
  const take = (stored: Stored): void => {
    const values = new Map<string, string[]>();
    for (const [name, value] of stored.entries) values.set(name, [...(values.get(name) ?? []), value]);
    setFound(found.filter((each) => each !== stored));
    void put(values, "");
  };
  const drop = (stored: Stored): void => {
    forgetUnsent(stored.draft);
    setFound(found.filter((each) => each !== stored));
  };
  const use = (there: readonly string[] | null): void => {
    if (both === null) return;
    if (there === null) {
      setStanding({ ...standing, both: { ...both, said: words.chooseFirst } });
      return;
    }
    const values = both.fields.filter(({ name }) => there.includes(name));
    void put(new Map(values.map(({ name, thereValues }) => [name, thereValues])), both.settles);
  };
  return (
    <>
      <div ref={place} className={styles.line}>
        <p role="status" className={styles.status} data-state={standing.state}>
          {both === null ? (
            <>
              {standing.said}
              {standing.state === "signed-out" ? (
                <>
                  {" "}
                  <a href={signInHref(keep)} target="_blank" rel="noopener">
                    {words.signIn}
                  </a>
                </>
              ) : null}
            </>
          ) : (
            <>
              {words.changed} <a href="#both">{words.seeBoth}</a>
            </>
          )}
        </p>
      </div>
      <noscript>
        <p className={styles.found}>{words.noScript}</p>
      </noscript>
      {found.map((stored) => (
        <Found key={stored.draft} stored={stored} keep={keep} onTake={() => take(stored)} onDrop={() => drop(stored)} />
      ))}
      {both === null ? null : <Both both={both} words={words} onUse={use} />}
    </>
  );
}
