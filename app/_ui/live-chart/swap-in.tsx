"use client";

import { type ReactNode, useEffect, useState } from "react";
import type { SeasonChart } from "@/lib/report/chart-model";
import { LiveChart } from "./live-chart";
import styles from "./live-chart.module.css";

/**
 * Shows the still drawing that came with the page, and on a wide screen puts the live chart in its place once scripts
 * run; in print and on a phone the still one stays.
 */
export function SwapIn({
  chart,
  title,
  children,
}: {
  readonly chart: SeasonChart;
  readonly title: string;
  readonly children: ReactNode;
}) {
  const [live, setLive] = useState<"still" | "live">("still");
  useEffect(() => {
    const wide = window.matchMedia("(min-width: 1100px)");
    const choose = () => setLive(wide.matches ? "live" : "still");
    choose();
    wide.addEventListener("change", choose);
    return () => wide.removeEventListener("change", choose);
  }, []);
  return (
    <div className={styles.box} data-chart={live}>
      <div className={live === "live" ? styles.stillBehind : styles.still}>{children}</div>
      {live === "live" ? (
        <div className={styles.live}>
          <LiveChart chart={chart} title={title} />
        </div>
      ) : null}
    </div>
  );
}
