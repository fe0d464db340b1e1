import { requireWords } from "../_server/gate";
import { PageHead } from "../_ui/part/part";

export default async function FamilyNotFound() {
  const words = await requireWords();
  return (
    <main id="page">
      <PageHead title={words.say("family.dead.title")} lede={words.say("family.dead.next")} />
    </main>
  );
}
