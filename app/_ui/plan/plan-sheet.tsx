import type { PlanSheet as Sheet } from "@/lib/report/plan-model";
import { LineDrawing } from "../filming/line-drawing";
import { Part } from "../part/part";
import styles from "./plan.module.css";

/** One sheet for whoever looks after the phone. */
export function PlanSheet({ model }: { readonly model: Sheet }) {
  return (
    <div className={styles.sheet}>
      <Part margin={model.margin} explains={model.explains}>
        <h2 lang={model.lang}>{model.heading}</h2>
        {model.lines.map((line) => (
          <p key={line} lang={model.lang}>
            {line}
          </p>
        ))}
        <div className={styles.cards} lang={model.lang}>
          {model.cards.map((card) => (
            <section key={card.heading} className={styles.card} aria-label={card.heading}>
              <h3>{card.heading}</h3>
              <figure>
                <LineDrawing drawing={card.plan.drawing} size="plan" />
                <figcaption>{card.plan.caption}</figcaption>
              </figure>
              <ol>
                {card.steps.map((step) => (
                  <li key={step}>{step}</li>
                ))}
              </ol>
              <ul>
                {card.checks.map((check) => (
                  <li key={check}>{check}</li>
                ))}
              </ul>
            </section>
          ))}
        </div>
        {model.care.map((line) => (
          <p key={line} lang={model.lang}>
            {line}
          </p>
        ))}
      </Part>
    </div>
  );
}
