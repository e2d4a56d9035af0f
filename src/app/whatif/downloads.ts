/** Plots and tables out to files of this computer. */

export function download(name: string, blob: Blob): void {
  const url = URL.createObjectURL(blob);
  const link = document.createElement("a");
  link.href = url;
  link.download = name.replace(/[^\p{L}\p{N}._ -]+/gu, "");
  link.click();
  setTimeout(() => URL.revokeObjectURL(url), 10_000);
}

/** The plots on the page, one under the other with their captions, as a PNG. */
export async function picture(title: string): Promise<Blob> {
  const plots = [...document.querySelectorAll<HTMLElement>(".plots figure:has(canvas)")];
  const canvases = plots.map((plot) => plot.querySelector("canvas")!);
  const scale = devicePixelRatio || 1;
  const line = 22 * scale;
  const sheet = document.createElement("canvas");
  sheet.width = Math.max(...canvases.map(({ width }) => width));
  sheet.height = 2 * line + canvases.reduce((sum, { height }) => sum + height + line, 0);
  const pen = sheet.getContext("2d")!;
  const { backgroundColor } = getComputedStyle(document.body);
  pen.fillStyle = backgroundColor;
  pen.fillRect(0, 0, sheet.width, sheet.height);
  pen.fillStyle = getComputedStyle(document.body).color;
  pen.font = `600 ${14 * scale}px system-ui, sans-serif`;
  pen.fillText(title, 8 * scale, line, sheet.width - 16 * scale);
  let y = 2 * line;
  plots.forEach((plot, i) => {
    pen.font = `${13 * scale}px system-ui, sans-serif`;
    pen.fillText(plot.querySelector("figcaption b")?.textContent ?? "", 8 * scale, y);
    pen.drawImage(canvases[i]!, 0, y + line / 4);
    y += canvases[i]!.height + line;
  });
  return new Promise((resolve) => sheet.toBlob((blob) => resolve(blob!), "image/png"));
}
