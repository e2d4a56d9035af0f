import type { Chapter } from "./topic.ts";

/** The way in, and the books. */
export const BEGINNING: Chapter = {
  title: "Begin, save, print",
  topics: [
    {
      name: "Begin a garment",
      summary:
        "Press *New*, choose what you are making, and answer a few questions: the answers become a book with every formula visible.",
      words:
        "how do I begin, start, first steps, getting started, make a new book, new garment, new book, tutorial, where to start, blank book, empty, peplum skirt cape",
      says: [
        "*New* asks what is being made, and then for the few measurements that it needs. A small drawing shows where each is taken, and the answer is drawn while you type. *Make a new book* makes a book of it; *Add to the open book* puts its pages behind those that are there.",
        "Everything in the new book may be changed: each figure is typed or is a formula that you can read and overwrite. Change a measurement, and everything that depends on it follows.",
        "To begin from nothing, press *Books*, then *A blank book in* your unit. Its pages have columns ready for their stage: measurements, draft, fittings, cut list, trimmings.",
        "*Books* has ready books too, to look at how a whole job is written down.",
      ],
      see: ["Type a length", "Write a formula", "Find your way"],
    },
    {
      name: "Find your way",
      summary:
        "At the left are the pages of the book, in the middle the grid, at the right the drawing and the working, at the foot the problems.",
      words: "what is where, screen, parts of the page, layout, overview, where is, panels",
      says: [
        "The pages stand under the stages of the work: *Measure*, *Draft*, *Fit*, *Cut*, *Trimmings*. A figure on one page can be used on any other.",
        "Above the grid stands what is typed in the selected cell, and under it what there is to say about it.",
        "*Drawing* shows the piece or the garment of the selected cell, *Working* how its figure was calculated, and *What if* what another figure would change. Press a heading to open or close its panel.",
        "At the foot stands how many cells have an error or a warning; press the count to see them.",
      ],
      see: ["Pages", "See the working", "Ask what if", "Problems in cells", "Keys"],
    },
    {
      name: "Save your work",
      summary:
        "The book is saved in this browser as you type, and nowhere else. *Save a file* writes it to a file that you can keep or send.",
      words:
        "save, saving, save as, save to the same file, overwrite a file, when was it saved, where is my work kept, where are books kept, backup, store, lose, lost, send a book, share, private, privacy, data, is my data private, internet, export",
      says: [
        "Beside the title stands whether everything is saved. Nothing that you type leaves your machine.",
        "*Save a file*, or `Ctrl S`, writes the open book as a file. Where the browser allows it, you say once where the file is, and from then on the same file is written again; after a reload the browser may ask once more for its permission. Other browsers make a download. `Ctrl Shift S` saves to another file.",
        "Under the sign that everything is saved stands the file, when it was written, and whether the book has changed since. A file that something else has changed meanwhile is never written over without a question, and a write that fails leaves it as it was.",
        "Keep such a file: a browser may lose what it keeps when it is cleaned up. To send a book to someone, send them its file.",
        "Under *Books*, *Save all books to one file* makes a single file of all your books.",
      ],
      see: ["Open a book or a file", "Copy a book", "Delete a book, and the bin"],
    },
    {
      name: "Work without a network, install as an app",
      summary:
        "Once the page has been loaded, it opens and works without a network and without its server. Browsers that can install pages offer to install it as an app.",
      words:
        "offline, without internet, no network, no wifi, in the workshop, at the theatre, install, app, desktop, home screen, phone, tablet, update, new version of Ellwand, new version is ready",
      says: [
        "A moment after the first start the browser has stored every part of the page, including the parts that you have not used yet. Nothing is sent anywhere for this.",
        "To install it, use the browser's own menu: “Install”, or “Add to home screen”. The app has the same books as the page in that browser.",
        "When there is a newer Ellwand, the page says so and continues with the version that it was started with. The newer version is used the next time the page is loaded. What you are typing stays as it is.",
      ],
      see: ["Save your work"],
    },
    {
      name: "Open a book or a file",
      summary: "Press *Books* for the books in this browser, for ready books, and to open a file.",
      words:
        "open, load, import, file, another computer, bring in, receive, saved books, ready books, examples, template",
      says: [
        "Press a book in the list to open it; the one you leave is saved. *Open a file …* reads a book that was saved as a file, a table or a drawing of another program. A file can also be dropped anywhere on the page.",
        "A book that comes from a file becomes a book of its own: it replaces none of yours. Where the browser allows it, *Save a file* then writes to that file.",
      ],
      see: ["Save your work", "A table from another program", "Pieces from a drawing"],
    },
    {
      name: "Pieces from a drawing",
      summary:
        "Open or drop an SVG or DXF file: its outlines become pattern pieces of the book, once you have said how large the drawing is.",
      words:
        "svg, dxf, import a pattern, trace, traced, tracing, vector, drawing program, outline file, digitised, scanned pattern, paper pattern, curve, scale of a drawing, known length, test square, open a drawing, piece from a file",
      says: [
        "Press *Books*, then *Open a file …*, or drop the file on the page. Each closed line is shown as a piece with its edges numbered. Lines inside a piece, closed or open, are marks on it; lines whose ends nearly meet are closed. The dialog says what was done and what was ignored, such as texts and pictures. *Cancel* ends the reading of a long drawing.",
        "*As the file says* takes the size from the file. Where the file does not say it, or you do not trust it, choose *I know a length*, press an edge that you have measured, such as a side of a test square, and type its true length.",
        "The grain runs down the drawing; *Turn by* turns a piece. Untick *Take* to leave a piece out. *Put into the book* puts the pieces on a new Draft page, into the selected cell and the cells below, or into a new book, and one undo takes them out again.",
        "A piece that `draft` on the command line has written comes back with the names of its edges and its marks. The command line reads drawings too: `npm run -s ellwand -- import FILE.svg --out BOOK`.",
      ],
      see: ["Open a book or a file", "OUTLINE", "EDGE_LENGTH", "WITH_ALLOWANCE"],
    },
    {
      name: "A table from another program",
      summary:
        "Open, drop or paste a CSV file or a spreadsheet (.xlsx, .ods): it is shown as it was understood before anything comes into a book.",
      words:
        "import a table, import a spreadsheet, open a spreadsheet, csv, tsv, xlsx, ods, open document, office, list from another program, semicolon, comma separated, decimal comma, umlauts wrong, wrong letters, encoding, headings, German table, French table, Spanish table, sheets, macros, formulas from another program",
      says: [
        "Press *Books*, then *Open a file …*, or drop the file on the page, or paste it. The content shows what kind of file it is, whatever its name. A dialog says what was found: pages, rows and columns, headings, what parts the cells, the decimal mark, the unit of lengths, what each column holds. Change a choice, and the file is read again at once.",
        "Headings in German, French or Spanish, such as Schnittteil, Quantité or Cantidad, become the words that the functions know, and the dialog says which became what. A heading that may mean two things, such as Taille, is kept until you choose one under it.",
        "*Add the page to this book* adds new pages, with lengths converted to the book's unit; one *Undo* takes all of them out. *Make a book of it* makes a book of its own. Where a title or a name is in the book already, the new one gets the file's name too, and the dialog says so.",
        "Formulas that Ellwand knows come alive, and each is compared with the value in the file. A formula that can't be calculated here, or comes to another value, is kept as the file's value, with the formula in a note. Macros are not run and links are not followed.",
        "A spreadsheet that Ellwand saved comes back as the book it was, with its formulas as they were typed. A file has at most 50 MB, a page 20,000 rows and 200 columns.",
      ],
      see: ["Open a book or a file", "Save for another program", "Copy and paste"],
    },
    {
      name: "Save for another program",
      summary:
        "The menu beside a page saves the page as CSV, or the whole book as a spreadsheet whose formulas other programs calculate.",
      words:
        "export, save as a spreadsheet, save as csv, xlsx, ods, open document, office, send a table, other program, spreadsheet program, formulas without Ellwand, workings",
      says: [
        "Press the sign beside the page's title: *Save as CSV, as shown* writes the page with fractions as they are seen, *Save as CSV, figures in full* plain numbers. No text of such a file is taken for a formula by the program that opens it.",
        "*Save the book as a spreadsheet, .xlsx* and *Save the book as a spreadsheet, .ods* write every page. A sewing function becomes its steps in plain arithmetic on a sheet of workings, so that it follows a changed measurement without Ellwand; what only a curve or a lay gives is a value with a note. Notes, names, widths, hidden rows and choices go along; photographs stay in Ellwand.",
        "The command line does the same: `npm run -s ellwand -- export BOOK --to ods --out FILE`.",
      ],
      see: ["A table from another program", "Save your work", "Pages"],
    },
    {
      name: "Copy a book",
      summary: "Press *Books*, then *Copy …* beside the book, and type a title for the copy.",
      words: "copy a book, duplicate, second version, the same book again, save as, clone, another wearer",
      says: [
        "The copy is a book of its own: what you change in it leaves the first as it is.",
        "For another wearer you may not need a second book: a page can be copied with its names, under *Copy for another wearer…* in the page's menu. Different figures within one book are kept as trials under *What if*.",
      ],
      see: ["Pages", "Compare two books", "Ask what if"],
    },
    {
      name: "Compare two books",
      summary: "Press *Books*, then *Compare* beside a book: it is compared with the one that is open.",
      words: "compare, difference, what changed, two versions, before and after, diff, older copy",
      says: [
        "The list says what differs, where, and which figures changed because of it; each line leads to its cell. Beside the open book, *What has changed* compares it with its state when it was opened. *Compare with a file …* takes the other book from a file.",
      ],
      see: ["Copy a book"],
    },
    {
      name: "Earlier versions of a book",
      summary:
        "Press *Books*, then *Earlier versions* beside a book: each can be looked at, compared with the present book, and brought back.",
      words:
        "earlier version, earlier versions, previous version, older version, history, yesterday, go back to last week, snapshot, restore a version, bring back, undo is gone, lost, before I changed it, autosave, backup",
      says: [
        "A version is kept before each large change, such as a paste of many cells, a deleted page or another unit, and otherwise every five minutes of work. Recent versions stand close together, older ones are days or weeks apart; the list says the rule.",
        "*Look at* shows its pages, *Compare* what differs from the book now, *Open as a copy* makes a book of it. *Bring back* puts it in place of the present book; that is one step, which *Undo* takes back, and the present book is kept as a version too.",
        "A version with a name, given by *Name …*, stays until you delete it. A book that is deleted permanently takes its versions along.",
      ],
      see: ["Undo and redo", "Compare two books", "Save your work"],
    },
    {
      name: "Delete a book, and the bin",
      summary: "*Move to bin* beside a book in the list of *Books*; it can be brought back from there.",
      words:
        "delete a book, remove a book, throw away, bin, restore, bring back, deleted by mistake, get back, lost book",
      says: [
        "The bin is below the list of books. A book stays there until you delete it permanently; until then, bring it back by its button.",
      ],
      see: ["Undo and redo"],
    },
    {
      name: "Many wearers in one book",
      summary:
        'One measurement chart holds all wearers; under *New*, "Company of a play" begins such a book with its garments and its shopping.',
      words:
        "cast, company, play, roles, several people, many wearers, one chart for all, measurement chart, group, choir, wardrobe, who is unmeasured, shopping list for everybody, roll up",
      says: [
        'Each row of the chart is a wearer and what was worn beneath; its headings are "wearer", "worn beneath", "taken on" and the names of the measurements. Give the block a name, such as `figures`. `MEASURE_OF` takes one figure of one wearer from it; `WEARER_CHECK` beside each row says who is unmeasured and which figures to take again, and marks those figures.',
        "A draft page for one wearer names the wearer in a cell of its own; *Copy for another wearer…* makes the page again with another name. Or let a garment run down a table, one wearer in each row, and fill its formulas down.",
        "`LIST_ENTRY` finds each cloth or trimming of a list once, `LIST_SUM` adds up what belongs to it, `YARDAGE` lays all pieces of a cloth together, and `TO_BUY` takes off what is in stock.",
      ],
      see: ["Pages", "MEASURE_OF", "WEARER_CHECK", "LIST_SUM", "TO_BUY"],
    },
    {
      name: "Undo and redo",
      summary:
        "Press *Undo* or `Ctrl Z`: every step can be taken back, one after another. *Redo* or `Ctrl Y` takes it again.",
      words:
        "undo, redo, mistake, take back, go back, restore, deleted, wrong, get back what I deleted, accident, revert",
      says: [
        "A paste, a sort, a deleted page or a change of unit is one step. Point at *Undo* to read what it would take back. The steps are kept when the page is loaded again.",
        "While a cell is being typed in, `Escape` leaves it as it was before.",
      ],
      see: ["Earlier versions of a book", "Delete a book, and the bin"],
    },
    {
      name: "Print",
      summary:
        "*Print* (`Alt P`) makes a PDF of the pattern, full size or as a small model, or of another document of the book, and shows each sheet before you print it.",
      words:
        "print, printer, paper, print a full size pattern, full size, true scale, half scale, model, PDF, SVG, pattern sheet, cutting pattern, tile, tiled, A4, letter, A3, A0, roll, plotter, copy shop, projector, plot, preview, how many sheets, page map, large type, blank chart, measurement form, print the cut list, print the fitting log, print the shopping list, print the lay, marking strip, pleat strip, button strip, print the working, print everything, export pieces",
      says: [
        "Choose under *What*, then the paper and what else the document takes. The pattern has the pieces of the cut lists, *all pieces to cut*; pieces that are on no cut list are named below it and left out, unless you choose *every piece of the book*, those of one page or one piece under *Pieces*. In a book without a cut list it has all pieces. Below stand the number of sheets, the pieces, and what is left out or not certain. Beside it is the preview: *Next*, the arrow keys, a swipe or a press on the map go from sheet to sheet, and *Enlarge* brings one nearer. *Print* above *Working*, and beside a piece or a lay that is drawn, opens the same for what is seen there.",
        "Beside the pattern there are the measurement chart, filled or blank, the cut list with small pictures, the fitting log, the shopping list, each lay to scale with a ruler, paper strips with the places of pleats, buttons or eyelets along an edge, and the working of cells. What is an estimate, is being worked out or has a problem says so beside its figure.",
        "*Save the PDF* saves a file, which a copy shop can print too. *Print it* opens the browser's print: choose actual size, 100 %, there, and measure the test squares of the first sheet before you cut.",
        "The browser's own print (`Ctrl P`) is for the page on the screen: every row of it, and the drawing as it is in view, without menus and not to scale.",
        "The command line writes the same documents: `npm run -s ellwand -- print BOOK --out pattern.pdf`; `draft` writes one SVG drawing for each piece.",
      ],
      see: ["Save your work", "Copy and paste"],
    },
  ],
};
