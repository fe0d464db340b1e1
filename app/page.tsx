import { redirect } from "next/navigation";
import { firstPage, requireViewer } from "./_server/gate";

export default async function FirstPage() {
  redirect(firstPage(await requireViewer("/")));
}
