/** The one thing the catalogue asks of the bundler: files by folder. */
interface ImportMeta {
  glob<M>(pattern: string | readonly string[], options: { eager: true }): Record<string, M>;
}
