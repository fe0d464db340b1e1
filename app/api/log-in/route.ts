import { tellLogInLeft } from "@/app/_server/access/log-in-left";

export function GET(): Promise<Response> {
  return tellLogInLeft("GET /api/log-in");
}

export function POST(): Promise<Response> {
  return tellLogInLeft("POST /api/log-in");
}
