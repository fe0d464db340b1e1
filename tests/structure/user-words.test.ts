// biome-ignore-all lint/suspicious/noTemplateCurlyInString: the planted sources hold templates of their own
import { describe, expect, it } from "vitest";
import { titleWords, userWords } from "./user-words";

describe("userWords", () => {
  it.each([
    ["const a = <h1>Students</h1>;", "Students"],
    ["const a = <p>{count} days</p>;", "days"],
    ['const a = <button aria-label="Close">×</button>;', "Close"],
    ['const a = <img alt={"A chart"} />;', "A chart"],
    ["const a = <input placeholder={`Find ${name}`} />;", "Find"],
    ['const a = <p title={open ? "Shut" : undefined} />;', "Shut"],
    ['const a = <p>{"Hello"}</p>;', "Hello"],
    ["const a = <p>{`${n} days`}</p>;", "days"],
    ['const a = <p>{good ? "Yes" : null}</p>;', "Yes"],
    ['const a = <p>{good && "Yes"}</p>;', "Yes"],
    ["const a = rows.map((row) => <li key={row.id}>Row</li>);", "Row"],
    ["const a = (<>\n  <A b={() => <i>in</i>} />\n</>);", "in"],
    ["function A() { return <p>Proofband</p>; }", "Proofband"],
  ])("catches %s", (source, text) => {
    expect(userWords(source).map((one) => one.text)).toEqual([text]);
  });

  it.each([
    "const a = <h1>{words.title}</h1>;",
    'const a = <p className="big" id="top" data-kind="odd">{n} &nbsp; ± 2</p>;',
    'const a = <p className={open ? "open" : "shut"}>{say("students.title")}</p>;',
    'const a = <p>{kind === "odd" ? <Odd /> : <Even kind="even" />}</p>;',
    'const a = <p>{kind === "odd" && (kind !== "even") ? words.odd : words.even}</p>;',
    'const a = <p>{names.filter((one) => one.kind === "a" || (one.kind) === "b").join(", ")}</p>;',
    "const a = b < c && d > e;",
    "const a = useState<string>(text);",
    "const pick = <T,>(a: T) => a;",
    "const a = <p>{/* a remark */}</p>;",
    "// <p>Words</p>",
  ])("lets %s pass", (source) => {
    expect(userWords(source)).toEqual([]);
  });

  it("says on which line", () => {
    expect(userWords("const a = (\n  <p>\n    {n}\n  </p>\n);\nconst b = <b>Bold</b>;")).toEqual([
      { line: 6, text: "Bold" },
    ]);
  });

  it("catches a title written into the page", () => {
    expect(titleWords('export const metadata = { title: "Students" };')).toEqual([{ line: 1, text: "Students" }]);
    expect(titleWords("export const metadata = { title: words.students };")).toEqual([]);
  });
});
