"use client";

import { type ReactNode, useEffect, useRef, useState } from "react";
import type { SeasonChart } from "@/lib/report/chart-model";
import { type ChartForm, FORM_SIZES, formFor } from "../chart-forms";
import { LiveChart } from "./live-chart";
import styles from "./live-chart.module.css";

interface Shown {
  readonly form: ChartForm;
  readonly scale: number;
}

/**
 * Shows the still drawing that came with the page, and puts the live chart in its very place once scripts run; on a phone
 * and in print the still one stays.
 */
export function SwapIn(props: { readonly chart: SeasonChart; readonly title: string; readonly children: ReactNode }) {
  const box = useRef<HTMLDivElement>(null);
  const [shown, setShown] = useState<Shown | null>(null);
  useEffect(() => {
    const element = box.current;
    if (!element) return;
    const watcher = new ResizeObserver(() => {
      const width = element.clientWidth;
      const form = formFor(width);
      setShown(form === "phone" ? null : { form, scale: width / FORM_SIZES[form].width });
    });
    watcher.observe(element);
    return () => watcher.disconnect();
  }, []);
  return (
    <div ref={box} className={styles.box} data-chart={shown === null ? "still" : "live"}>
      <div className={shown === null ? undefined : styles.behind}>{props.children}</div>
      {shown === null ? null : (
        <div className={styles.live} style={{ transform: `scale(${shown.scale})` }}>
          <LiveChart chart={props.chart} title={props.title} form={shown.form} />
        </div>
      )}
    </div>
  );
}
