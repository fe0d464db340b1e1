import { referenceHere } from "./_server/door/answering";
import { requireWords } from "./_server/gate";
import { Refusal } from "./_ui/refusal/refusal";

export default async function NotFound() {
  const words = await requireWords();
  return (
    <Refusal
      title={words.say("absent.title")}
      happened={words.say("absent.happened")}
      reference={words.say("refusal.reference", { reference: referenceHere() })}
      way={{ href: "/", label: words.say("absent.way") }}
    />
  );
}
