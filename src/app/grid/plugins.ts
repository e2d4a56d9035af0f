/** The parts of the grid library that are used beside its base. */
import { Autofill } from "handsontable/plugins/autofill";
import { HiddenRows } from "handsontable/plugins/hiddenRows";
import { ManualColumnMove } from "handsontable/plugins/manualColumnMove";
import { ManualColumnResize } from "handsontable/plugins/manualColumnResize";
import { ManualRowMove } from "handsontable/plugins/manualRowMove";
import { registerPlugin } from "handsontable/plugins/registry";

registerPlugin(Autofill);
registerPlugin(HiddenRows);
registerPlugin(ManualColumnMove);
registerPlugin(ManualRowMove);
registerPlugin(ManualColumnResize);
