import Link from "next/link";
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

/** A page of plain words and links. */
export function TextPage({ model }: { readonly model: TextPageModel }) {
  return (
    <>
      <PageHead title={model.title} lede={model.lede} />
      {model.parts.map((part) => (
        <TextPart key={part.margin} part={part} />
      ))}
    </>
  );
}
