"use client";

import { useCallback, useEffect, useRef, useState } from "react";
import type { LogInEndModel, LogInLeft } from "@/lib/report/basic-model";
import styles from "./log-in-end.module.css";
import { isTimeToAsk, type LogInWatch, WARN } from "./log-in-watch";

/** So often it is looked at the clock, in milliseconds: a machine that slept has missed its time. */
const LOOK_MS = 20_000;
/** An end that moved by less, in milliseconds, is the same one: it is not said again to who hears the page. */
const SAME_MS = 30_000;

interface Said {
  readonly kind: "quiet" | "soon" | "latest" | "stays" | "unreached" | "over";
  /** Empty where no hour is said. */
  readonly at: string;
}

const QUIET: Said = { kind: "quiet", at: "" };

function hourIn(seconds: number): string {
  const format = new Intl.DateTimeFormat(document.documentElement.lang || "en", {
    timeStyle: "short",
    hourCycle: "h23",
  });
  return format.format(new Date(Date.now() + seconds * 1000));
}

async function ask(method: "GET" | "POST"): Promise<LogInLeft | "over" | "unreachable"> {
  try {
    const answer = await fetch("/api/log-in", { method });
    if (answer.status === 401) return "over";
    return answer.ok ? ((await answer.json()) as LogInLeft) : "unreachable";
  } catch {
    return "unreachable";
  }
}

function saidOf(left: LogInLeft): Said {
  if (left.unused > WARN) return QUIET;
  return { kind: left.latest <= WARN ? "latest" : "soon", at: hourIn(left.unused) };
}

/** Says before a log-in ends that it will, lets it go on, and says when it is over. Another window may have gone on meanwhile. */
export function LogInEnd({ model }: { readonly model: LogInEndModel }) {
  const { words } = model;
  const [said, setSaid] = useState<Said>(QUIET);
  const watch = useRef<LogInWatch>({ end: Number.POSITIVE_INFINITY, told: "nothing", askedAt: 0 });
  const asking = useRef(false);

  const take = useCallback((left: LogInLeft | "over" | "unreachable", pressed: "pressed" | "looked"): void => {
    const now = Date.now();
    if (left === "unreachable") {
      if (pressed === "pressed") setSaid(({ at }) => ({ kind: "unreached", at }));
      return;
    }
    if (left === "over") {
      watch.current = { end: 0, told: "over", askedAt: now };
      setSaid({ kind: "over", at: "" });
      return;
    }
    const end = now + left.unused * 1000;
    const isSame = Math.abs(end - watch.current.end) < SAME_MS;
    watch.current = { end, told: left.unused <= WARN ? "near" : "nothing", askedAt: now };
    const next = saidOf(left);
    if (pressed === "pressed" && next.kind === "quiet") setSaid({ kind: "stays", at: hourIn(left.unused) });
    else setSaid((before) => (isSame && before.kind === next.kind ? before : next));
  }, []);
  useEffect(() => {
    const { unused } = model.left;
    watch.current = { ...watch.current, end: Date.now() + unused * 1000 };
    if (unused > WARN) {
      watch.current = { ...watch.current, told: "nothing" };
      setSaid(QUIET);
    }
    const look = async (event?: Event): Promise<void> => {
      // Told of hiding too.
      if (event && document.visibilityState !== "visible") return;
      if (asking.current || !isTimeToAsk(watch.current, Date.now(), event ? "returned" : "clock")) return;
      asking.current = true;
      const answer = await ask("GET");
      asking.current = false;
      take(answer, "looked");
    };
    void look();
    const timer = setInterval(() => void look(), LOOK_MS);
    document.addEventListener("visibilitychange", look);
    return () => {
      clearInterval(timer);
      document.removeEventListener("visibilitychange", look);
    };
  }, [model, take]);

  if (said.kind === "quiet") return <div hidden data-log-in="quiet" />;
  return (
    <div className={styles.end} data-log-in={said.kind}>
      <p role="alert">{words[said.kind].replace("{at}", said.at)}</p>
      {said.kind === "soon" || said.kind === "unreached" ? (
        <button type="button" className="say" onClick={async () => take(await ask("POST"), "pressed")}>
          {words.stay}
        </button>
      ) : null}
      {said.kind === "over" ? (
        <a href="/sign-in" target="_blank" rel="noopener">
          {words.signIn}
        </a>
      ) : null}
    </div>
  );
}
