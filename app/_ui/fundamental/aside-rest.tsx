import type { AsideRest as Model } from "@/lib/report/aside-model";
import { LinkRow } from "../link-row/link-row";
import { Part } from "../part/part";

/** How a session stands, and which fact would let it count. */
export function AsideRest({ model }: { readonly model: Model }) {
  return (
    <Part margin={model.margin}>
      <h2>{model.heading}</h2>
      {model.texts.map((text) => (
        <p key={text}>{text}</p>
      ))}
      <LinkRow links={model.links} />
    </Part>
  );
}
