import { readdirSync, readFileSync } from "node:fs";
import { po } from "gettext-parser";
import { afterEach, describe, expect, test } from "vitest";
import { phrase, plural } from "../../../functions/phrase.ts";
import { speak } from "../../../functions/speech.ts";
import { chosenLanguage } from "../../../src/languages/choose.ts";
import {
  allMessages,
  catalogueText,
  directionOf,
  languageOf,
  languages,
  TEMPLATE,
} from "../../../src/setup/strings/catalogues.ts";
import { merged, messagesOf } from "../../../src/setup/strings/messages.ts";
import { outside, saidOutside } from "../../../src/setup/strings/outside.ts";
import { translationOf } from "../../../src/setup/strings/translation.ts";

const root = `${import.meta.dirname}/../../..`;
const messages = allMessages(root);

afterEach(() => speak(null));

describe("the catalogues", () => {
  test("hold the sentences of the code as it is: run `npm run strings` after changing one", () => {
    expect(messages.length).toBeGreaterThan(1000);
    expect(readFileSync(`${root}/src/languages/${TEMPLATE}`, "utf8")).toBe(catalogueText(messages, null));
    for (const tag of languages(root)) {
      const text = readFileSync(`${root}/src/languages/${tag}.po`, "utf8");
      expect(text).toBe(catalogueText(messages, po.parse(text)));
      languageOf(tag, text, messages);
    }
  });

  test("the page, its workers, the command line and what reads files have no English outside them", () => {
    // Names of the trade mark and of keys, and what is no text of the page.
    const known: readonly RegExp[] = [
      /shelf\.ts:\d+ no database$/,
      /print-it\.ts:\d+ not possible$/,
      /service-worker\.ts:\d+ § is not there$/,
      /own-file\.ts:\d+ check:$/,
      / Ellwand(?: paper)?$/,
      // What is typed on the command line, and keys and names of what it writes.
      /^command\/\S+ \w+ (?:templates\/|tests\/|book\.json|pieces\.json|SPREAD_|--out help)/,
      /^command\/\S+ (?:--\w+ [\w.§]+(?:, )?)+$/,
      /^command\/\S+ (?:\{stripWidth|`calculate BOOK`|id, quantity, outline|<text|BOOK --cell|npm start|check:$)/,
      /^command\/\S+ (?:rests on estimates|with fittings|beside the answers|how laid|take care|§ as worn)$/,
    ];
    // Tables that are translated as wholes or hold the words of tables in other languages, and what spreadsheets say in English in every language (own-file.ts compares).
    const left =
      /\.d\.ts$|^app\/help\/(?:topics|shortcuts)|^exchange\/(?:write-|ods-styles|plain-book|note-words|live-formula|heading-words)/;
    const found = ["app", "worker", "exchange", "paper", "command"]
      .flatMap((folder) =>
        readdirSync(`${root}/src/${folder}`, { recursive: true, encoding: "utf8" }).map(
          (path) => `${folder}/${path}`,
        ),
      )
      .filter((path) => /\.tsx?$/.test(path) && !left.test(path))
      .flatMap((path) => outside(path, readFileSync(`${root}/src/${path}`, "utf8")));
    expect(found.filter((one) => !known.some((pattern) => pattern.test(one)))).toEqual([]);
  });

  test("the sewing functions refuse, doubt and judge in sentences of the catalogue", () => {
    const files = readdirSync(`${root}/functions`, { recursive: true, encoding: "utf8" }).filter((path) =>
      path.endsWith(".ts"),
    );
    expect(files.length).toBeGreaterThan(300);
    expect(
      files.flatMap((path) => saidOutside(path, readFileSync(`${root}/functions/${path}`, "utf8"))),
    ).toEqual([]);
    expect(saidOutside("A.ts", "throw new Refusal((say) => `the hem is long`, at);")).toEqual([
      "A.ts:1 the hem is long",
    ]);
    expect(saidOutside("A.ts", "throw new Refusal(phrase`the hem is long`);")).toEqual([]);
    expect(
      saidOutside("A.ts", `measure("a", \`along \${of}\`, 1); measure("b", () => "along this seam", 1);`),
    ).toEqual(["A.ts:1 along §", "A.ts:1 along this seam"]);
    expect(
      saidOutside(
        "A.ts",
        `measure("a", () => phrase\`along \${of}\`, 1); measure("b", "along this seam", 1);`,
      ),
    ).toEqual([]);
  });

  test("so do the labels of their drawings", () => {
    expect(saidOutside("A.ts", 'stroke(line, "seam", { label: isHem ? "hem" : phrase`top` });')).toEqual([
      "A.ts:1 hem",
    ]);
    expect(saidOutside("A.ts", `dimension(a, b, { label: \`tier \${i}\`, shows: "tier" });`)).toEqual([
      "A.ts:1 tier §",
    ]);
  });

  test("a translation goes from the code to the catalogue and back into the page", () => {
    const code = `const a = phrase\` \${plural(found.length, "# piece is", "# pieces are")} pinned on “\${book.title}” \`;`;
    const [message] = merged(messagesOf("a.ts", code));
    expect(message?.id).toBe("{found, plural, one {# piece is} other {# pieces are}} pinned on “{title}”");
    const known = po.parse("");
    known.translations = {
      "": {
        [message!.id]: {
          msgid: message!.id,
          msgstr: ["“{title}”: {found, plural, =0 {nichts fest} one {# Teil fest} other {# Teile fest}}"],
        },
      },
    };
    speak(languageOf("de", catalogueText([message!], known), [message!]));
    const say = (count: number) =>
      phrase` ${plural(count, "# piece is", "# pieces are")} pinned on “${"Schoß"}” `;
    expect([0, 1, 2].map(say)).toEqual([
      " “Schoß”: nichts fest ",
      " “Schoß”: 1 Teil fest ",
      " “Schoß”: 2 Teile fest ",
    ]);
  });

  test("a comment for translators stands above the sentences of its line, and of no other", () => {
    const code = "// For translators: a noun.\nconst a = [phrase`Lay`, phrase`Cut`];\nconst b = phrase`Sew`;\nphrase`Lay`;";
    const messages = merged(messagesOf("a.ts", code));
    expect(messages.map(({ id, hint }) => [id, hint])).toEqual([["Lay", "a noun."], ["Cut", "a noun."], ["Sew", undefined]]);
    expect(catalogueText(messages, null).split("#. a noun.")).toHaveLength(3);
  }); // biome-ignore format: long lines

  test("the sentence of a measured figure is collected as it stands", () => {
    const code =
      'context.measure("area", front ? "area of the front" : "area of the back", area("of a piece"));';
    expect(messagesOf("a.ts", code).map(({ id }) => id)).toEqual(["area of the front", "area of the back"]);
  });

  test("braces and apostrophes of a sentence mean themselves", () => {
    const [message] = messagesOf("a.ts", `phrase\`the book's '\${name}' {in braces}\``);
    expect(message!.id).toBe("the book's ''{name}' '{'in braces'}'");
    expect(translationOf(message!.id, message!.names)).toEqual(["the book's '", 0, "' {in braces}"]);
  });

  test("a translation that does not fit its sentence is refused, and says why", () => {
    expect(() => translationOf("nach {datei}", ["file"])).toThrow("uses {datei}, and its values are {file}");
    expect(() => translationOf("gespeichert", ["file"])).toThrow("leaves out {file}");
    expect(() => translationOf("nach {file", ["file"])).toThrow("can't be read");
    expect(() => translationOf("nach {file, date}", ["file"])).toThrow("a format that is not understood");
    const sentence = merged(messagesOf("a.ts", "const a = phrase`the hem is long`;"));
    const known = po.parse("");
    const msgid = "the hem is long";
    known.translations = { "": { [msgid]: { msgid, msgstr: ["Der Saum ist lang."] } } };
    expect(() => languageOf("de", catalogueText(sentence, known), sentence)).toThrow(
      "src/languages/de.po: “Der Saum ist lang.” ends with a full stop, and the English sentence does not",
    );
    expect(() => messagesOf("a.ts", `phrase\`\${plural(n, a, "# b")}\``)).toThrow(
      "must be texts without values",
    );
  });
});

test("English beside a phrase is found, in elements, attributes, choices and sentences", () => {
  const code = `const A = () => <p title="Width of cloth" className="one two">{isOpen ? "open" : phrase\`shut\`} the book</p>;
    throw new Error("this book is gone"); find("button, input");`;
  expect(outside("A.tsx", code)).toEqual([
    "A.tsx:1 Width of cloth",
    "A.tsx:1 open",
    "A.tsx:1 the book",
    "A.tsx:2 this book is gone",
  ]);
});

test("a reader gets the language that is set, else the first of the browser's that there is, else English", () => {
  const there = ["de", "pt-BR", "he"];
  expect(chosenLanguage(there, ["fr-FR", "de-CH", "en"], null)).toBe("de");
  expect(chosenLanguage(there, ["en-GB", "de"], null)).toBe("en");
  expect(chosenLanguage(there, ["pt-BR"], null)).toBe("pt-BR");
  expect(chosenLanguage(there, ["pt"], null)).toBe("en");
  expect(chosenLanguage(there, ["de"], "he")).toBe("he");
  expect(chosenLanguage(there, ["zh-Hant-x-a-TW"], "xx")).toBe("en");
  expect([directionOf("he"), directionOf("ar-EG"), directionOf("de"), directionOf("az-Arab")]).toEqual([
    "rtl",
    "rtl",
    "ltr",
    "rtl",
  ]);
});
