import Link from "next/link";
import type { ReactNode } from "react";
import type { TextPage as TextPageModel } from "@/lib/report/form-model";
import { PageHead, Part } from "../part/part";
import styles from "./text-page.module.css";

/** One part of plain words and links. */
export function TextPart({ part }: { readonly part: TextPageModel["parts"][number] }) {
  return (
    <Part margin={part.margin}>
      <h2>{part.heading}</h2>
      {part.paragraphs.map((paragraph) => (
        <p key={paragraph}>{paragraph}</p>
      ))}
      {part.links.length === 0 ? null : (
        <ul className={styles.links}>
          {part.links.map((link) => (
            <li key={link.href}>
              {link.href.startsWith("/api/") ? (
                <a href={link.href}>{link.label}</a>
              ) : (
                <Link prefetch={false} href={link.href}>
                  {link.label}
                </Link>
              )}
            </li>
          ))}
        </ul>
      )}
    </Part>
  );
}

/** A page of plain words and links; `first`: what stands before its parts. */
export function TextPage({ model, first }: { readonly model: TextPageModel; readonly first?: ReactNode }) {
  return (
    <>
      <PageHead title={model.title} lede={model.lede} />
      {first}
      {model.parts.map((part) => (
        <TextPart key={part.margin} part={part} />
      ))}
    </>
  );
}
