import type { ReactNode } from "react";
import type { FairTestPart, FairTestsPage } from "@/lib/report/fair-tests-model";
import { Facts } from "../facts/facts";
import type { FormAction } from "../form/form";
import { BackLink } from "../part/back-link";
import { PageHead, Part } from "../part/part";
import { Press } from "../plan/press";

function One({ test, step }: { readonly test: FairTestPart; readonly step: FormAction }) {
  return (
    <Part margin={test.margin} explains={test.explains}>
      <h2>{test.heading}</h2>
      <p>{test.said}</p>
      <Facts facts={test.facts} arrangement="wide" />
      {test.looks.length === 0 ? null : (
        <ol>
          {test.looks.map((look) => (
            <li key={look}>{look}</li>
          ))}
        </ol>
      )}
      {test.presses.map((press) => (
        <Press key={press.label} model={press} action={step} />
      ))}
    </Part>
  );
}

/** Tests of two drills by the lot: each in words first, then the form that plans one, then how it works. */
export function FairTests(props: {
  readonly model: FairTestsPage;
  /** Takes a look, or ends a test. */
  readonly step: FormAction;
  readonly children?: ReactNode;
}) {
  const { model, step, children } = props;
  return (
    <>
      <PageHead title={model.title} lede={model.lede} before={<BackLink link={model.back} />}>
        {model.notices.map((notice) => (
          <p key={notice} role="status">
            {notice}
          </p>
        ))}
      </PageHead>
      {model.tests.map((test) => (
        <One key={test.id} test={test} step={step} />
      ))}
      {children}
      <Part margin={model.method.margin}>
        <h2>{model.method.heading}</h2>
        {model.method.lines.map((line) => (
          <p key={line}>{line}</p>
        ))}
      </Part>
    </>
  );
}
