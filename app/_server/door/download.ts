/** A file's name with nothing in it that could end a header, leave a folder or run backwards. */
function safeName(name: string): string {
  const plain = name
    .toLowerCase()
    .replace(/[^a-z0-9.-]/g, "-")
    .replace(/^[.-]+|[.-]+$/g, "")
    .replace(/\.{2,}/g, ".");
  return plain.slice(-100) || "file";
}

/** A file to be kept, under a name without anything personal (RFC 6266). */
export function fileResponse(name: string, type: string, body: string | Uint8Array): Response {
  const bytes = typeof body === "string" ? body : new Uint8Array(body);
  return new Response(bytes, {
    headers: { "content-type": type, "content-disposition": `attachment; filename="${safeName(name)}"` },
  });
}

/** A table to be kept; the mark in front tells a spreadsheet that it is UTF-8. */
export function csvResponse(name: string, body: string): Response {
  return fileResponse(name, "text/csv; charset=utf-8", `\uFEFF${body}`);
}
