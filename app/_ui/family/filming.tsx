import type { FamilyFilming } from "@/lib/report/family-look-model";
import { LineDrawing } from "../filming/line-drawing";
import styles from "./filming.module.css";

/** How the next video is made, and what to look at afterwards; the ticks belong to no form, so nothing of them is sent. */
export function Filming({ model }: { readonly model: FamilyFilming }) {
  const { heading, tip, swings, cards, checks } = model;
  return (
    <>
      <h2>{heading}</h2>
      {tip === "" ? null : <p className={styles.tip}>{tip}</p>}
      {swings === "" ? null : <p>{swings}</p>}
      {cards.map((card) => (
        <section key={card.heading} className={styles.card} aria-label={card.heading}>
          <h3>{card.heading}</h3>
          <figure className={styles.figure}>
            <LineDrawing drawing={card.plan} size="plan" />
            <figcaption>{card.caption}</figcaption>
          </figure>
          <ol className={styles.steps}>
            {card.steps.map((step) => (
              <li key={step}>{step}</li>
            ))}
          </ol>
          <div className={styles.pictures}>
            {card.pictures.map(({ drawing, lead, caption }) => (
              <figure key={caption}>
                <LineDrawing drawing={drawing} size="picture" />
                <figcaption>
                  <strong>{lead}</strong> {caption}
                </figcaption>
              </figure>
            ))}
          </div>
        </section>
      ))}
      <fieldset className={styles.checks}>
        <legend>{checks.heading}</legend>
        {checks.items.map((item) => (
          <label key={item}>
            <input type="checkbox" />
            <span>{item}</span>
          </label>
        ))}
        <p>{checks.otherwise}</p>
        <p className={styles.kept}>{checks.kept}</p>
      </fieldset>
    </>
  );
}
