/** What the list of ready books asks of the bundler: files as text, each fetched when it is asked for. */
interface ImportMeta {
  glob(pattern: string, options: { query: "?raw"; import: "default" }): Record<string, () => Promise<string>>;
}
