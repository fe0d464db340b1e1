import { downloadAcademyArchive } from "../../_server/load-take-out";

export async function GET(): Promise<Response> {
  return downloadAcademyArchive();
}
