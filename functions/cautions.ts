/** Cautions that several functions share. Local rules, and the advice of licensed or responsible people, take precedence over them. */

export const LACING =
  "Lacing must never hinder breathing: loosen it at any pain, numbness or faintness, and see that the wearer or a dresser can undo it fast.";

export const BONING =
  "Boning must never hinder breathing or press on bone: stop at any pain or numbness. Round and cover every tip; for back trouble, pregnancy or children ask a licensed practitioner first.";

export const CORDS =
  "No cords, drawstrings or long ties at the neck or hood of children's clothes; follow local rules (EN 14682, 16 CFR 1120 among them).";

export const FLAME =
  "Drapery, trimming and costume near flame or hot lamps must meet the venue's rules and the local fire code; ask whoever is responsible for them.";

export const HOOPS =
  "A hooped skirt stands out where its wearer can not see it: near flame or hot lamps follow the venue's rules and the local fire code, and let the wearer practise doors, stairs and sitting.";
