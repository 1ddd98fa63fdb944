// The JSON types of the actions. Generated from Rust: change them there, then run
//     UPDATE=1 cargo test -p wearbook-app --features schema

/** An answer; not having asked is no answer. */
export type Answer = "yes" | "no" | "unknown";

/** The layout of one engine. Mains and crankpins are counted from the front; cylinders as [`Numbering`] says. */
export type Arrangement = {
  /** How the cylinders stand. */
  layout: Layout,
  /** Number of cylinders, 1 to 16. */
  cylinders: number,
  /** Number of main bearings, 2 to one more than there are crankpins (two more in a flat engine, some of which have
   * an outrigger bearing). */
  mains: number,
  /** The main that takes the end thrust, counted from the front. */
  thrust_main: number,
  /** Rods side by side on one crankpin: 1, or 2 in V and flat engines. */
  rods_per_crankpin: number,
  /** Where the camshaft runs. */
  camshaft: Camshaft,
  /** Bearings of each camshaft; 0 without a camshaft. */
  cam_bearings: number,
  /** The followers. */
  tappets: Tappets,
  /** Valves per cylinder: 0, or 2 to 5. */
  valves_per_cylinder: number,
  /** How cylinders are numbered. */
  numbering: Numbering,
  /** Which end is called the front. */
  front: FrontEnd, };

/** Everything that follows from a job. */
export type Assessment = {
  /** The engine in a line, such as "in-line 6, 7 mains, thrust on main 4"; none before the arrangement is entered. */
  engine: string | null,
  /** Every part in strip-down order; empty before the arrangement is entered. */
  parts: Array<PartView>,
  /** How much has been looked at. */
  progress: Progress,
  /** The marks of caps and rods. */
  marks: MarksView,
  /** Why it happened, most likely first. */
  causes: CauseReport,
  /** What a reader must know about the record itself: entries of a newer version, entries for parts that the
   * engine, as now arranged, does not have. */
  notices: Array<string>, };

/** A bank of a V or flat engine, seen from the rear looking towards the front. */
export type Bank = "left" | "right";

/** How the count passes over two banks. */
export type Banks = "one-then-other" | "across";

/** Where the camshaft runs. */
export type Camshaft = "in-block" | "overhead-single" | "overhead-twin" | "none";

/** The trade's tables. */
export type Catalogue = {
  /** Kinds of part. */
  kinds: Array<KindEntry>,
  /** Kinds of wear. */
  tags: Array<TagEntry>,
  /** The zones of each drawing, in the order of the drawing. */
  zone_maps: Record<ZoneMap, Array<ZoneEntry>>,
  /** What can be done about a part, mildest first. */
  outcomes: Array<OutcomeEntry>,
  /** The lines of a job's sheet. */
  text_fields: Array<TextFieldEntry>,
  /** The questions about an engine's past. */
  history_facts: Array<HistoryFactEntry>,
  /** Ordinary engines to start from. */
  arrangements: Array<StartingPoint>,
  /** What stands where the risk is. */
  cautions: Array<string>, };

/** The ranked causes of one engine's wear. */
export type CauseReport = {
  /** Whether enough has been seen to name a cause. */
  enough_seen: boolean,
  /** One sentence that a customer understands: the cause, or that not enough has been seen. */
  summary: string,
  /** Every cause of the catalogue, most likely first. */
  causes: Array<CauseView>, };

/** One cause with what speaks for and against it. */
export type CauseView = {
  /** Its written form, such as `dirt-in-oil`. */
  id: string,
  /** Its name, lower case. */
  name: string,
  /** The computed probability, 0 to 1. */
  probability: number,
  /** The probability in words: "very likely", "likely", "possible", "unlikely", "very unlikely". */
  likelihood: string,
  /** The probability in figures as coarse as the evidence is: "about 80 %", "more than 95 %". */
  percent: string,
  /** The sentence for the customer. */
  plainly: string,
  /** What speaks for it, strongest first. */
  evidence_for: Array<Evidence>,
  /** What speaks against it, strongest first. */
  evidence_against: Array<Evidence>,
  /** What to check before assembly. */
  check: Array<string>,
  /** Where its figures come from. */
  source: string, };

/** What a person did, in the forms that this version knows. */
export type Change = { "do": "fill",
  /** Which line. */
  field: TextField,
  /** What was typed. */
  text: string, } | { "do": "recall",
  /** The question. */
  fact: HistoryFact,
  /** The answer. */
  answer: Answer, } | { "do": "arrange",
  /** The whole layout. */
  arrangement: Arrangement, } | { "do": "note-mark",
  /** On what. */
  place: MarkPlace,
  /** The marks. */
  mark: Mark, } | { "do": "add-photo",
  /** The part. */
  part: Part,
  /** The photo's content. */
  photo: PhotoId, } | { "do": "remove-photo",
  /** The part. */
  part: Part,
  /** The photo's content. */
  photo: PhotoId, } | { "do": "tag",
  /** The part. */
  part: Part,
  /** What was seen. */
  tag: Tag,
  /** How bad. */
  grade: Grade,
  /** Where; may be empty. */
  zones: Array<Zone>, } | { "do": "untag",
  /** The part. */
  part: Part,
  /** The tag. */
  tag: Tag, } | { "do": "clean",
  /** The part. */
  part: Part, } | { "do": "remark",
  /** The part. */
  part: Part,
  /** What was written. */
  text: string, } | { "do": "overrule",
  /** The part. */
  part: Part,
  /** What is to be done. */
  outcome: Outcome,
  /** Why. */
  reason: string, } | { "do": "follow-rules",
  /** The part. */
  part: Part, } | { "do": "undo",
  /** The edit. */
  edit: EditId, };

/** What to do about one part. */
export type Decision = {
  /** What stands: the person's decision, or else the rules'. */
  outcome: Outcome,
  /** What the rules say. */
  by_rules: Outcome,
  /** The person's reason, where they decided otherwise. */
  overruled_because: string | null,
  /** Every rule that applies, the deciding one first. */
  reasons: Array<Reason>,
  /** Whether anybody has looked at the part; a part that is renewed anyway has an outcome without a look. */
  looked_at: boolean,
  /** What a person may choose instead. */
  possible: Array<Outcome>, };

/** The papers. */
export type Document = "report-pdf" | "report-text";

/** The id of an edit. Sorts by wall-clock milliseconds, then by a counter, then by device.
 *
 * Written as three groups of hexadecimal digits, `019ac2f1d3e8-0004-5f3a90c1b2d4e6f8`, so that the text sorts alike. */
export type EditId = string;

/** One end of the crankshaft. */
export type End = "front" | "rear";

/** Why an action was refused. As JSON it is exactly these two fields. */
export type Error = {
  /** What kind: lower case words joined by hyphens. The page acts on it and never on the sentence. */
  code: string,
  /** What is wrong and what would be right. */
  message: string, };

/** A group of like findings and its weight. */
export type Evidence = {
  /** In words: "scoring, grade 3, on 4 lower main shells". */
  words: string,
  /** The parts it was seen on; empty for what is known of the engine's past. */
  parts: Array<Part>,
  /** How much it changes the odds of the cause: the factor, as its base-2 logarithm rounded to a tenth. Positive
   * speaks for the cause. */
  weight: number, };

/** One tag on one part. */
export type Finding = {
  /** What. */
  tag: Tag,
  /** Its name. */
  name: string,
  /** How bad. */
  grade: Grade,
  /** The grade's sentence. */
  sentence: string,
  /** Where, in the order of the drawing. */
  zones: Array<Zone>, };

/** Which end of the crankshaft this engine's manual calls the front. */
export type FrontEnd = "away-from-flywheel" | "flywheel";

/** The grade of a tag. For scratches: 1 seen, not felt; 2 felt with a fingernail; 3 catches a fingernail; 4 metal gone
 * or moved. Every tag has its own four sentences ([`super::TagRow::grades`]). */
export type Grade = 1 | 2 | 3 | 4;

/** A question about the engine's past that shifts what is likely. */
export type HistoryFact = "long-storage" | "coolant-in-oil" | "overheated" | "recent-rebuild" | "neglected-oil" | "low-oil-pressure" | "worked-hard";

/** A question about the engine's past. */
export type HistoryFactEntry = {
  /** The fact. */
  id: HistoryFact,
  /** The question as asked. */
  question: string, };

/** An edit in words. */
export type HistoryLine = {
  /** The edit. */
  edit: EditId,
  /** When: milliseconds since 1970-01-01 UTC, by the clock of the device on which it was made. */
  at: number,
  /** What. */
  sentence: string,
  /** Whether it has been taken back. */
  undone: boolean,
  /** Whether it can be taken back: what stands and is not itself about undoing. */
  undoable: boolean,
  /** The undo that took it back; undoing that does it again. */
  again: EditId | null, };

/** The job that came. */
export type Imported = {
  /** The job. */
  job: JobId, };

/** The name of a job: 128 random bits, written as 32 hexadecimal digits, so that jobs of two shops never share one. */
export type JobId = string;

/** A job in one line. */
export type JobLine = {
  /** The job. */
  job: JobId,
  /** Whose engine it is; may be empty. */
  customer: string,
  /** What the engine came out of; may be empty. */
  machine: string,
  /** The arrangement in words, once entered. */
  engine: string | null,
  /** When it was last changed: milliseconds since 1970-01-01 UTC. */
  changed_at: number,
  /** Parts that were looked at. */
  looked: number,
  /** Parts of the engine. */
  parts: number,
  /** Photos on its parts. */
  photos: number, };

/** A job, whole. */
export type JobView = {
  /** The job. */
  job: JobId,
  /** The lines of its sheet that are filled in. */
  texts: { [key in TextField]?: string },
  /** What is known of the engine's past. */
  history: { [key in HistoryFact]?: Answer },
  /** The layout, once entered. */
  arrangement: Arrangement | null,
  /** The engine drawn as a plan, once the layout is entered. */
  plan: Plan | null,
  /** All that follows. */
  assessment: Assessment,
  /** The edit that undo would take back. */
  last_edit: EditId | null,
  /** The undo that redo would take back. */
  redo: EditId | null, };

/** A kind of part. */
export type KindEntry = {
  /** The kind. */
  id: PartKind,
  /** The full name in the singular, lower case. */
  name: string,
  /** The word that follows a position. */
  short: string,
  /** The tags that make sense for it, nearest to hand first. */
  tags: Array<Tag>,
  /** Its drawing. */
  zone_map: ZoneMap,
  /** What can be done about it, mildest first. */
  outcomes: Array<Outcome>,
  /** Whether it is renewed whatever it looks like. */
  always_renewed: boolean, };

/** How the cylinders stand to each other. */
export type Layout = "inline" | "vee" | "flat";

/** The marks of one cap or rod. */
export type Mark = {
  /** The number or letters as they stand there, such as "3" or "II". */
  text: string,
  /** Where it comes from. */
  marking: Marking,
  /** On which side it stands. */
  side: MarkSide | null,
  /** Which way the arrow or the bearing tang points. */
  points: End | null, };

/** What carries a mark. */
export type MarkPlace = { "main-cap": number } | { "rod": number } | { "rod-cap": number };

/** The side of the engine on which a mark is stamped, seen from the rear looking to the front. */
export type MarkSide = "left" | "right" | "front" | "rear" | "underneath";

/** One cap or rod. */
export type MarkView = {
  /** Which. */
  place: MarkPlace,
  /** Its name. */
  label: string,
  /** The mark, once noted. */
  mark: Mark | null, };

/** Where a mark comes from. */
export type Marking = "found" | "made";

/** The marks of caps and rods: what is noted, what is missing, what is odd. */
export type MarksView = {
  /** Every cap and rod in strip-down order. */
  places: Array<MarkView>,
  /** Number of places without a note. */
  missing: number,
  /** Doubles, mismatches and gaps. */
  warnings: Array<string>, };

/** How cylinders are numbered. */
export type Numbering = {
  /** The end where cylinder 1 is. */
  from: End,
  /** How the count passes over two banks; without effect in an in-line engine. */
  banks: Banks,
  /** The bank of cylinder 1; without effect in an in-line engine. */
  first_bank: Bank, };

/** An outcome, from mild to severe. *Can't say yet* stands above the milder ones, which can't be trusted before the
 * missing look or reading, and below machining and renewal, which stand whatever is still to be seen. */
export type Outcome = "put-back" | "clean" | "rebuild-here" | "polish" | "cant-say" | "machine" | "replace";

/** What can be done. */
export type OutcomeEntry = {
  /** The outcome. */
  id: Outcome,
  /** In words, lower case. */
  words: string, };

/** One part of one engine. */
export type Part = string;

/** A kind of part. */
export type PartKind = "main-shell" | "main-journal" | "housing-bore" | "thrust-face" | "rod-shell" | "crankpin" | "rod" | "piston" | "rings" | "bore" | "tappet" | "lobe" | "cam-journal" | "cam-bearing" | "camshaft" | "crankshaft" | "oil-pump" | "timing-drive" | "auxiliary-drive" | "core-plugs" | "block";

/** One part with all that is known and concluded about it. */
export type PartView = {
  /** The part. */
  part: Part,
  /** Its kind. */
  kind: PartKind,
  /** What a mechanic calls it. */
  label: string,
  /** Looked at or not, and what was seen. */
  seen: Seen,
  /** The worst grade of damage. */
  worst: Grade | null,
  /** The tags, worst first. */
  findings: Array<Finding>,
  /** Photos in the order taken in. */
  photos: Array<PhotoId>,
  /** The remark; empty if none. */
  note: string,
  /** What to do about it. */
  decision: Decision, };

/** The name of a photo's content: its SHA-256 as 64 hexadecimal digits. */
export type PhotoId = string;

/** How large a picture is asked for. */
export type PhotoSize = "thumb" | "screen" | "original";

/** The whole plan. */
export type Plan = {
  /** Crankshaft with rods and pistons, valve gear, single items. */
  sections: Array<PlanSection>, };

/** One part in the grid. */
export type PlanCell = {
  /** The part. */
  part: Part,
  /** Column from 0. */
  column: number,
  /** Row from 0, within its section. */
  row: number,
  /** Columns it takes. */
  span: number,
  /** How it is drawn. */
  symbol: Symbol,
  /** A few letters to stand in the symbol. */
  mark: string, };

/** A part of the plan with its own rows. */
export type PlanSection = {
  /** Its heading. */
  title: string,
  /** Number of rows. */
  rows: number,
  /** Number of columns. */
  columns: number,
  /** The column on which the shaft's centre line runs, if a shaft runs through. */
  centre_line: number | null,
  /** Row labels, front to rear, one each row; empty where a row needs none. */
  row_labels: Array<string>,
  /** The parts. */
  cells: Array<PlanCell>, };

/** How much of the engine has been looked at. */
export type Progress = {
  /** Parts of the engine. */
  parts: number,
  /** Parts that were looked at. */
  looked: number,
  /** Of these, parts with damage. */
  worn: number,
  /** Photos taken in. */
  photos: number, };

/** Why. */
export type Reason = {
  /** The rule's written form, such as `renewed-at-overhaul`. */
  rule: string,
  /** What it concludes. */
  outcome: Outcome,
  /** Why, in a sentence that names the finding. */
  because: string,
  /** The rule itself, in a sentence. */
  why: string,
  /** Where the rule comes from. */
  source: string, };

/** Whether somebody has looked at a part, and what they saw. */
export type Seen = "not-looked" | "clean" | "worn";

/** The shop's settings. What has not been set is empty. */
export type Settings = {
  /** The shop's name, for the head of its papers. */
  shop_name: string,
  /** The shop's address, one or more lines. */
  shop_address: string,
  /** Where the page was, to go back there after the system has closed the app. */
  last_screen: string, };

/** An ordinary engine. */
export type StartingPoint = {
  /** What it is called. */
  name: string,
  /** Its layout. */
  arrangement: Arrangement, };

/** The outline by which a part is drawn. */
export type Symbol = "shell-upper" | "shell-lower" | "journal" | "housing" | "thrust" | "rod" | "piston" | "rings" | "bore" | "lobe" | "tappet" | "bush" | "item";

/** A kind of wear or damage. */
export type Tag = "scoring" | "embedded-debris" | "pitting" | "hot-spot" | "copper-showing" | "wiping" | "fatigue-cracks" | "lining-loss" | "corrosion" | "bright-back" | "rust" | "scuffing" | "spalling" | "dished-face" | "stuck-plunger" | "worn-nose" | "seizure" | "cracks" | "deposits" | "handling-damage" | "looks-even";

/** A kind of wear. */
export type TagEntry = {
  /** The tag. */
  id: Tag,
  /** Its name, lower case. */
  name: string,
  /** One line that a customer understands. */
  meaning: string,
  /** The sentence of each grade, 1 to 4. */
  grades: [string, string, string, string],
  /** Whether it reports damage. */
  is_damage: boolean, };

/** The follower between cam and valve gear. */
export type Tappets = "flat-solid" | "flat-hydraulic" | "roller-solid" | "roller-hydraulic" | "none";

/** A line of the job's sheet. */
export type TextField = "customer" | "contact" | "machine" | "engine-number" | "use" | "complaint" | "remarks";

/** A line of the sheet. */
export type TextFieldEntry = {
  /** The line. */
  id: TextField,
  /** Its name on the sheet. */
  label: string, };

/** A field of a part's surface. Front, rear, left and right are those of the engine, seen from the rear looking to the
 * front. */
export type Zone = "front-left" | "front-crown" | "front-right" | "middle-left" | "middle-crown" | "middle-right" | "rear-left" | "rear-crown" | "rear-right" | "back" | "face-upper" | "face-lower" | "journal-front" | "journal-middle" | "journal-rear" | "fillet" | "oil-hole" | "nose" | "flanks" | "base-circle" | "lobe-front-edge" | "lobe-rear-edge" | "foot-centre" | "foot-ring" | "foot-edge" | "body" | "plunger" | "crown" | "ring-lands" | "thrust-skirt" | "opposite-skirt" | "pin-bosses" | "top-thrust" | "top-opposite" | "top-front" | "top-rear" | "middle-thrust" | "middle-opposite" | "middle-front" | "middle-rear" | "bottom-thrust" | "bottom-opposite" | "bottom-front" | "bottom-rear";

/** Which drawing a part kind has. */
export type ZoneMap = "shell" | "thrust-face" | "journal" | "lobe" | "tappet" | "piston" | "bore" | "none";

/** Every action: what it takes and what it answers. */
export interface Actions {
  catalogue: { arguments: Record<symbol, never>; reply: Catalogue };
  job_list: { arguments: Record<symbol, never>; reply: Array<JobLine> };
  job_create: { arguments: Record<symbol, never>; reply: JobView };
  job_open: { arguments: { 
/**
 * The job.
 */
job: JobId, }; reply: JobView };
  job_history: { arguments: { 
/**
 * The job.
 */
job: JobId, }; reply: Array<HistoryLine> };
  edits_append: { arguments: { 
/**
 * The job.
 */
job: JobId, 
/**
 * What was done, in order: 1 to 500 changes.
 */
changes: Array<Change>, }; reply: JobView };
  photo_add: { arguments: { 
/**
 * The job.
 */
job: JobId, 
/**
 * The part that the picture shows.
 */
part: Part, }; reply: JobView };
  photo_get: { arguments: { 
/**
 * The photo.
 */
photo: PhotoId, 
/**
 * How large.
 */
size: PhotoSize, }; reply: Blob };
  document_get: { arguments: { 
/**
 * The job.
 */
job: JobId, 
/**
 * The paper.
 */
document: Document, }; reply: Blob };
  archive_export: { arguments: { 
/**
 * The job.
 */
job: JobId, }; reply: Blob };
  archive_import: { arguments: Record<symbol, never>; reply: Imported };
  settings_get: { arguments: Record<symbol, never>; reply: Settings };
  settings_set: { arguments: { 
/**
 * What they are to be; what is missing becomes empty.
 */
settings: Settings, }; reply: Settings };
}
