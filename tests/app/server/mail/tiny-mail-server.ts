import net from "node:net";

/** How a mail server behaves: takes a mail, takes nobody, says nothing at all. */
export type Manner = "takes" | "refuses" | "silent";

/** A mail server of a test: what it was told, and the mails it took, line by line. */
export interface TinyMailServer {
  readonly port: number;
  readonly heard: readonly string[];
  readonly mails: readonly string[];
  connections(): number;
  close(): Promise<void>;
}

/** Speaks as much SMTP (RFC 5321) as it takes to be handed a mail, without TLS, on a port of its own. */
export function startMailServer(manner: Manner, host = "127.0.0.1"): Promise<TinyMailServer> {
  const heard: string[] = [];
  const mails: string[] = [];
  const open = new Set<net.Socket>();
  let connections = 0;
  const server = net.createServer((socket) => {
    connections++;
    open.add(socket);
    socket.on("close", () => open.delete(socket));
    socket.on("error", () => {});
    if (manner === "silent") return;
    socket.write("220 mail.example\r\n");
    let body: string | null = null;
    let rest = "";
    socket.on("data", (part) => {
      rest += part.toString("latin1");
      for (let end = rest.indexOf("\r\n"); end >= 0; end = rest.indexOf("\r\n")) {
        const line = rest.slice(0, end);
        rest = rest.slice(end + 2);
        if (body === null) {
          heard.push(line);
          if (line === "DATA") body = "";
          socket.write(`${answerTo(line, manner)}\r\n`);
        } else if (line === ".") {
          mails.push(body);
          body = null;
          socket.write("250 taken\r\n");
        } else body += `${line}\n`;
      }
    });
  });
  return new Promise((resolve) => {
    server.listen(0, host, () => {
      const address = server.address();
      resolve({
        port: typeof address === "object" && address ? address.port : 0,
        heard,
        mails,
        connections: () => connections,
        close: () =>
          new Promise((closed) => {
            for (const socket of open) socket.destroy();
            server.close(() => closed());
          }),
      });
    });
  });
}

function answerTo(line: string, manner: Manner): string {
  const word = line.split(" ")[0]?.toUpperCase();
  if (word === "EHLO") return "250-mail.example\r\n250 AUTH PLAIN";
  if (word === "AUTH") return "235 come in";
  if (word === "RCPT" && manner === "refuses") return "550 nobody of that name";
  if (word === "DATA") return "354 go on";
  return word === "QUIT" ? "221 bye" : "250 yes";
}
