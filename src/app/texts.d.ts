/** The bundler's glob of function-texts.ts: the texts of the files that match. */
interface ImportMeta {
  glob<M>(pattern: string, options: { eager: true; query: "?texts" }): Record<string, M>;
}
