/** A file to be kept, under a name without anything personal. */
export function csvResponse(name: string, body: string): Response {
  return new Response(`\uFEFF${body}`, {
    headers: {
      "content-type": "text/csv; charset=utf-8",
      "content-disposition": `attachment; filename="${name.replace(/[^a-z0-9.-]/g, "-")}"`,
    },
  });
}
