import type { ReviewPage } from "@/lib/report/review-model";
import { Verdict } from "../glyph/glyph";
import { Part } from "../part/part";

/** What is proved of a season: each change with its shape, its heading and its text; else that nothing is. */
export function ProvedPart({
  proved,
  className,
}: {
  readonly proved: ReviewPage["proved"];
  /** Of each change. */
  readonly className: string | undefined;
}) {
  return (
    <Part margin={proved.margin}>
      <h2>{proved.heading}</h2>
      {proved.items.length === 0 ? <p>{proved.empty}</p> : null}
      {proved.items.map((item) => (
        <div key={item.heading} className={className}>
          <h3>
            <Verdict glyph={item.glyph} word={item.heading} />
          </h3>
          <p>{item.text}</p>
        </div>
      ))}
    </Part>
  );
}
