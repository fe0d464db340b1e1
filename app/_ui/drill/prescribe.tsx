import Link from "next/link";
import type { PrescribePart } from "@/lib/report/build-prescribe";
import { Facts } from "../facts/facts";
import { Part } from "../part/part";
import styles from "./prescribe.module.css";

/** The drill for a fundamental: how it is given, and one press that opens its form filled in. Pain and pauses come first. */
export function Prescribe(props: {
  readonly model: PrescribePart | null;
  /** `quiet`: a drill for it isn't the one next thing. */
  readonly tone?: "next" | "quiet";
}) {
  const { model } = props;
  if (model === null) return null;
  return (
    <Part margin={model.margin}>
      <h2>{model.heading}</h2>
      {model.stop.map((text) => (
        <p key={text} className={styles.stop}>
          {text}
        </p>
      ))}
      {model.facts.length === 0 ? null : <Facts facts={model.facts} />}
      <p className={styles.press}>
        <Link
          prefetch={false}
          className={model.stop.length === 0 && props.tone !== "quiet" ? "do" : styles.link}
          href={model.press.href}
        >
          {model.press.label}
        </Link>
        {model.links.map((link) => (
          <Link prefetch={false} key={link.href} className={styles.link} href={link.href}>
            {link.label}
          </Link>
        ))}
      </p>
    </Part>
  );
}
