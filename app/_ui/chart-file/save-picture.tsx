"use client";

import { useEffect, useState } from "react";
import styles from "./save-picture.module.css";

/** Pixels of a picture for one of the drawing, so that it stays sharp on paper. */
const SCALE = 2;

function loadImage(href: string): Promise<HTMLImageElement> {
  return new Promise((resolve, reject) => {
    const image = new Image();
    image.onload = () => resolve(image);
    image.onerror = () => reject(new Error(href));
    image.src = href;
  });
}

/** The drawing as a picture (PNG), drawn here in the browser. */
async function drawPicture(href: string): Promise<Blob> {
  const image = await loadImage(href);
  const canvas = document.createElement("canvas");
  canvas.width = image.naturalWidth * SCALE;
  canvas.height = image.naturalHeight * SCALE;
  canvas.getContext("2d")?.drawImage(image, 0, 0, canvas.width, canvas.height);
  return new Promise((resolve, reject) =>
    canvas.toBlob((blob) => (blob ? resolve(blob) : reject(new Error("no picture"))), "image/png"),
  );
}

function keep(blob: Blob, fileName: string): void {
  const href = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = href;
  link.download = fileName;
  link.click();
  setTimeout(() => URL.revokeObjectURL(href), 10_000);
}

/** A button that saves a drawing of this server as a picture; it shows only where scripts run. */
export function SavePicture(props: {
  readonly href: string;
  readonly fileName: string;
  readonly label: string;
  /** Said when the picture can't be drawn. */
  readonly failed: string;
}) {
  const [state, setState] = useState<"unseen" | "ready" | "failed">("unseen");
  useEffect(() => setState("ready"), []);
  if (state === "unseen") return null;
  const save = (): void => {
    drawPicture(props.href)
      .then((blob) => keep(blob, props.fileName))
      .catch(() => setState("failed"));
  };
  return (
    <>
      <button type="button" className={styles.save} onClick={save}>
        {props.label}
      </button>
      <span role="status">{state === "failed" ? props.failed : ""}</span>
    </>
  );
}
