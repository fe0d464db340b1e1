import type { TellPage } from "@/lib/report/tell-model";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { MessageText } from "../plan/message-text";
import { Press } from "../plan/press";
import { TellPart } from "./tell-part";
import { Told } from "./told";

type Send = (data: FormData) => Promise<void>;

/** Where a coach tells the family: a message, a file, a letter, and what was told before. */
export function Tell(props: {
  readonly model: TellPage;
  readonly keep: Send;
  readonly back: Send;
  readonly language: Send;
}) {
  const { model, keep, back, language } = props;
  const { refused, message, file, letter, told } = model;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.notices.map((notice) => (
          <p key={notice} role="status">
            {notice}
          </p>
        ))}
      </PageHead>
      {refused === null ? null : <TellPart part={refused} />}
      {message === null ? null : (
        <Part margin={message.margin} explains={message.explains}>
          {message.note === "" ? null : <p>{message.note}</p>}
          <MessageText model={message.message} />
          <Press model={message.keep} action={keep} />
        </Part>
      )}
      {file === null ? null : (
        <TellPart part={file}>
          <p>
            <a href={file.download.href} download>
              {file.download.label}
            </a>
          </p>
          <Press model={file.keep} action={keep} />
        </TellPart>
      )}
      {letter === null ? null : <TellPart part={letter} />}
      {told === null ? null : <Told told={told} back={back} />}
      <TellPart part={model.language}>
        {model.language.presses.map((press) => (
          <Press key={press.label} model={press} action={language} />
        ))}
      </TellPart>
      <TellPart part={model.more} />
    </>
  );
}
