import { installationSecret } from "@/app/_server/access/secret";

process.stdout.write(installationSecret());
