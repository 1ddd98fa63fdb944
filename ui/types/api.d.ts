// The JSON types of the actions. Generated from Rust: change them there, then run
//     UPDATE=1 cargo test -p wearbook-app --features schema

/** What is done with a group. */
export type Action = "open" | "keep" | "polish" | "undersize-shells" | "machine" | "sleeve" | "renew" | "replace";

/** The job that an action has put into the book. */
export type Added = {
  /** The job. */
  job: JobId, };

/** How far a total may go beyond what the customer agreed to before they must be asked: the greater of an amount and a
 * share, but no more than a bound. All at zero allows nothing. */
export type Allowance = {
  /** An amount that may be exceeded by in any case, with tax. */
  least: Money,
  /** A share of what was agreed to, in hundredths of a per cent: 1000 is 10 %. */
  share: number,
  /** Never more than this; none where there is no such bound. */
  most?: Money, };

/** How amounts are written. */
export type Amounts = {
  /** The decimals of a currency by its three letters; two where it is not named here. */
  decimals: Record<string, number>,
  /** The largest, in minor units. */
  largest: Money, };

/** Something that came with the engine. */
export type Ancillary = {
  /** The edit that noted it. */
  edit: EditId,
  /** What. */
  what: string,
  /** In which state; may be empty. */
  remark: string,
  /** What it looked like. */
  photo: PhotoId | null,
  /** Whether it was given back. */
  given_back: boolean, };

/** An answer; not having asked is no answer. */
export type Answer = "yes" | "no" | "unknown";

/** An answer to a question about the engine's past. */
export type AnswerEntry = {
  /** The answer. */
  id: Answer,
  /** In words, lower case. */
  words: string, };

/** How a complaint stands. */
export type Answered = "explained" | "partly" | "not-explained" | "cant-say";

/** When a standing line applies. */
export type Applies = "always" | "with-machining";

/** When a standing line applies. */
export type AppliesEntry = {
  /** When. */
  id: Applies,
  /** In words, lower case. */
  words: string, };

/** What was proposed to the customer last, and what has become of it. */
export type Approval = {
  /** How many proposals there were: the number of the last one. */
  version: number,
  /** The edit that made the last proposal. */
  proposal: EditId | null,
  /** Exactly what was shown. */
  shown: Quote | null,
  /** What the customer answered. */
  answer: CustomerAnswer | null,
  /** How the quote of now differs from it. */
  since: Array<Since>, };

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
  front: FrontEnd,
  /** The end of the crankshaft that the oil reaches first, from the pump or its gallery; none if that is not known. */
  oil_from?: End,
  /** How it is made. */
  construction?: Construction, };

/** One of them. */
export type Arrival = {
  /** The number by which it goes. */
  arrival: number,
  /** What it is called where it comes from. */
  name: string, };

/** The number by which it goes until it is taken in. */
export type ArrivalBegun = {
  /** The number. */
  arrival: number, };

/** An item as it was asked for when it was ticked: so that the tick still tells what was ordered or sent when the job asks
 * for something else. */
export type Asked = {
  /** Which item. */
  key: ItemKey,
  /** In words, with the size: "Main bearing shells, 0.010 in undersize"; empty where an old entry did not tell. */
  words: string,
  /** The size beyond standard, in nanometres; zero is standard, none is no size or one that was not known yet. */
  size: number | null,
  /** How many; zero where an old entry did not tell. */
  quantity: number, };

/** Everything that follows from a job. */
export type Assessment = {
  /** The engine in a line, such as "in-line 6, 7 mains, thrust on main 4"; none before the arrangement is entered. */
  engine: string | null,
  /** Every part in strip-down order; empty before the arrangement is entered. */
  parts: Array<PartView>,
  /** What is looked at beside the parts, in the order in which it is met; empty before the arrangement is entered. */
  outside: Array<OutsideView>,
  /** How much has been looked at. */
  progress: Progress,
  /** The marks of caps and rods. */
  marks: MarksView,
  /** What can be measured only while the engine is together, and before which part comes off. */
  before_apart: Array<BeforeApart>,
  /** The sizes: what is done with each group of journals or bores, clearances, orders. */
  sizing: Sizing,
  /** What is hard to believe in the spec sheet, each in a sentence. */
  sheet_doubts: Array<string>,
  /** Why it happened, most likely first. */
  causes: CauseReport,
  /** The lists that are worked. */
  lists: Array<WorkList>,
  /** What the rebuild costs. */
  quote: Quote,
  /** What is to be done and stands on no line of it, in sentences. */
  left_out: Array<string>,
  /** Ways that serve the same end, priced side by side. */
  ways: Array<Ways>,
  /** What another engine would cost beside it. */
  other_engines: OtherEngines,
  /** What changed since the first estimate. */
  differences: Array<Difference>,
  /** What was proposed to the customer. */
  approval: Approval,
  /** Whether the work costs more than the customer agreed to, where they must be asked about it first. */
  excess: Excess | null,
  /** What is still open before the job can be closed. */
  still_open: Array<Open>,
  /** What a reader must know about the record itself: entries of a newer version, entries for parts that the
   * engine, as now arranged, does not have. */
  notices: Array<string>, };

/** A job that is put away. */
export type AwayLine = {
  /** The job. */
  job: JobId,
  /** Whose engine it is; may be empty. */
  customer: string,
  /** What the engine came out of; may be empty. */
  machine: string,
  /** Until when it can be brought back: milliseconds since 1970-01-01 UTC. */
  until: number, };

/** What came of one. */
export type BackedUp = {
  /** Jobs that had changed. */
  jobs: number,
  /** Photos that were new. */
  photos: number,
  /** Photos that can't be read here: the rest has been saved without them. */
  lacking: number,
  /** Jobs that can't be read here. */
  left_out: number, };

/** Where backups go, and how the last one went. */
export type Backup = {
  /** The folder, if one was chosen. */
  folder: string | null,
  /** When the last one was made and read back: milliseconds since 1970-01-01 UTC. */
  at: number | null,
  /** Why the last try failed, if it did. */
  failed: string | null, };

/** A bank of a V or flat engine, seen from the rear looking towards the front. */
export type Bank = "left" | "right";

/** How the count passes over two banks. */
export type Banks = "one-then-other" | "across";

/** One quantity that is measured before a part comes off. */
export type BeforeApart = {
  /** Of which part. */
  part: Part,
  /** What. */
  quantity: Quantity,
  /** In the shop's words: "Rod 3: side play". */
  words: string,
  /** The parts of which the first to come off takes the chance away, in strip-down order. */
  before: Array<Part>,
  /** Whether it was measured, as the engine was found. */
  chance: Chance, };

/** The wall on which the rings run. */
export type BoreWall = "iron" | "coated";

/** What a camshaft runs in. */
export type CamBore = "bushes" | "casting";

/** Where the camshaft runs. */
export type Camshaft = "in-block" | "in-block-side-valves" | "overhead-single" | "overhead-twin" | "none";

/** What a device can do. */
export type Can = {
  /** Take a photo into a file of ours. */
  take_photo: boolean,
  /** Hand files to other programs. */
  share: boolean,
  /** Keep the screen lit. */
  keep_awake: boolean,
  /** Tick. */
  tick: boolean, };

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
  /** What a customer may complain of. */
  complaints: Array<ComplaintEntry>,
  /** Ordinary engines to start from. */
  arrangements: Array<StartingPoint>,
  /** Kinds of measuring instrument. */
  instrument_kinds: Array<InstrumentKindEntry>,
  /** The phases of a rebuild, in order. */
  phases: Array<PhaseEntry>,
  /** The groups that go to one size. */
  size_groups: Array<SizeGroupEntry>,
  /** All work that has a price, on whatever part. */
  works: Array<WorkEntry>,
  /** Lines that stand on every bill. */
  standing: Array<StandingEntry>,
  /** When such a line applies. */
  applies: Array<AppliesEntry>,
  /** The rules by which parts are decided. */
  rules: Array<RuleEntry>,
  /** Where published manuals disagree and a shop says which view it follows. */
  disputes: Array<DisputeEntry>,
  /** How strongly evidence speaks, the weakest first. */
  strengths: Array<StrengthEntry>,
  /** What a reading says about a limit. */
  conformities: Array<ConformityEntry>,
  /** What stands for it where something must be known first, in words. */
  not_judged: string,
  /** Whether a line may be ordered. */
  order_states: Array<OrderStateEntry>,
  /** Answers to a question about the engine's past. */
  answers: Array<AnswerEntry>,
  /** Answers of the customer to a line of a proposal. */
  consents: Array<ConsentEntry>,
  /** In what state a part is bought. */
  part_states: Array<PartStateEntry>,
  /** Where old parts go. */
  old_parts: Array<OldPartEntry>,
  /** The jobs in which a bill is put to the customer. */
  job_scopes: Array<JobScopeEntry>,
  /** How much a job of a proposal is needed, least first. */
  needs: Array<NeedEntry>,
  /** What parts are made of. */
  materials: Array<MaterialEntry>,
  /** How amounts are written. */
  amounts: Amounts,
  /** Where the trade is split by country and the shop chooses. */
  terms: Array<TermEntry>,
  /** What stands above every decision and step of the work: said once on a screen. */
  governs: string,
  /** What can hurt in what is begun on a screen. */
  cautions: Array<ScreenCautions>, };

/** The ranked causes of one engine's wear. */
export type CauseReport = {
  /** What can be said of the whole engine. */
  verdict: Verdict,
  /** Whether enough has been seen to name a cause, and one is likely beside ordinary wear. */
  enough_seen: boolean,
  /** One sentence that a customer understands: the cause, or that not enough has been seen. */
  summary: string,
  /** What the customer complained of, each answered. */
  answers: Array<ComplaintAnswer>,
  /** Every cause of the catalogue that this engine can have, most likely first. Several may hold at once: the
   * probabilities don't sum to 1. A cause of one place (a bent rod, dirt behind a shell) stands here once, with the
   * probability that it is so at some place or other; `places` says where. */
  causes: Array<CauseView>,
  /** The ways in that were found, whatever came by them: each is put right. */
  to_close: Array<WayToClose>,
  /** What was seen that no cause of the catalogue explains well, worst first. */
  unexplained: Array<Unexplained>, };

/** One cause with what speaks for and against it. */
export type CauseView = {
  /** Its written form, such as `dirt-in-oil` or `bent-rod`. */
  id: string,
  /** Its name, lower case; with the place where it is likely: "bent or twisted rod, cylinder 3". */
  name: string,
  /** The computed probability, 0 to 1. */
  probability: number,
  /** Whether it is the wear that every engine has with time: no cause to be put right, and never named or told as one. */
  ordinary: boolean,
  /** Whether it is named as a cause: likelier than not, and enough has been seen. */
  named: boolean,
  /** Whether it is told with its reasons, and what it asks to be put right is to be done: at least possible, and enough
   * has been seen. */
  told: boolean,
  /** The probability in words: "very likely", "likely", "possible", "unlikely", "very unlikely". */
  likelihood: string,
  /** The probability in figures as coarse as the evidence is: "about 80 %", "more than 95 %". */
  percent: string,
  /** The sentence for the customer. */
  plainly: string,
  /** Whether it is of the whole engine, not of one place. */
  whole_engine: boolean,
  /** For a cause of one place: where it may be, likeliest first; places below 5 % are left out. */
  places: Array<PlaceView>,
  /** What speaks for it, strongest first. For a cause of one place: at the likeliest place. */
  evidence_for: Array<Evidence>,
  /** What speaks against it, strongest first. */
  evidence_against: Array<Evidence>,
  /** The ways by which it may have come in, likeliest first. */
  ways_in: Array<WayInView>,
  /** How it came about, from the way in to the complaint. */
  chain: Chain,
  /** What to check before assembly. */
  check: Array<Todo>,
  /** What to put right before assembly. */
  put_right: Array<Todo>,
  /** Where its figures come from. */
  source: string, };

/** What can hurt, and what to do about it. */
export type Caution = {
  /** Its written form. */
  id: string,
  /** What it is about, in a word or two. */
  about: string,
  /** What to do and what not, in at most 25 words. */
  line: string,
  /** Where it comes from: a published document, "common practice" or "from memory". */
  source: string, };

/** How one cause came about. */
export type Chain = {
  /** The ways in that are likely and of which something tells, in words, lower case, what was found first; empty while
   * none is. */
  ways: Array<string>,
  /** Whether the cause comes in from somewhere at all; else there is nothing to look for. */
  has_way_in: boolean,
  /** The cause, in words, lower case. */
  cause: string,
  /** What it did, in words: the findings that speak for it most. */
  damage: Array<string>,
  /** The complaints that this explains, in words. */
  complaints: Array<string>,
  /** What to ask about the past to know the way in, as far as nobody did; empty once one is named. */
  ask: Array<string>,
  /** Where to look for the way in, as far as nobody has; empty once one is named. */
  look: Array<Part>,
  /** The same in words. */
  look_labels: Array<string>, };

/** How it stands with what can be measured only while the engine is together. */
export type Chance = "open" | "taken" | "gone";

/** What a person did, in the forms that this version knows. */
export type Change = OnIntake | OnPart | OnReading | OnSheet | OnSize | OnMoney | OnList | OnJob;

/** What a line of a bill is for: a part or work on it, an item of the shop's own, or a line that stands on every bill. In
 * a log each has the form of its own name, told apart by its fields. */
export type Charge = PriceKey | OwnCharge | StandingCharge;

/** Where there is more than one way. */
export type Choice = {
  /** What it is about. */
  what: string,
  /** The way that is proposed, in words. */
  proposed: string,
  /** The other way, in words. */
  other: string,
  /** What the other way costs less or more, in words; empty where it is not known. */
  saving: string,
  /** The drawback of the other way, in a sentence. */
  drawback: string,
  /** Which of the two the shop advises, in a sentence. */
  advice: string, };

/** A complaint. Several may be told. */
export type Complaint = "knock" | "knock-without-load" | "knock-under-load" | "double-knock" | "knock-cold" | "knock-hot" | "worked-hard" | "noise-at-the-top" | "low-oil-pressure" | "low-pressure-at-idle" | "pressure-swings" | "oil-used" | "blue-smoke" | "white-smoke" | "black-smoke" | "breather-fumes" | "coolant-used" | "coolant-in-oil" | "oil-in-coolant" | "overheated" | "low-compression" | "would-not-turn" | "metal-in-oil" | "fuel-in-oil";

/** The answer to a complaint, or to several that one thing explains. */
export type ComplaintAnswer = {
  /** The complaints. */
  complaints: Array<Complaint>,
  /** In words: "Low oil pressure; oil pressure low at idle only". */
  told: string,
  /** How it stands. */
  answered: Answered,
  /** The same in words: "explained". */
  words: string,
  /** What is known of it beforehand, in sentences; may be empty. */
  before: string,
  /** By what it is explained, likeliest first; may be empty. */
  made_by: Array<MadeBy>,
  /** What else it may come from, and what is still to be looked at, in sentences; may be empty. */
  after: string,
  /** The parts that explain it; may be empty. */
  parts: Array<Part>,
  /** What would tell and is not all looked at, what tells most first; empty once it is explained. */
  look: Array<PartKind>,
  /** The probability that something that was found made it, 0 to 1; of several the least. */
  probability: number, };

/** A complaint. */
export type ComplaintEntry = {
  /** The written form. */
  id: Complaint,
  /** In words, as it is picked. */
  words: string,
  /** Where it is written what makes it. */
  source: string, };

/** A size that the machinist confirmed. */
export type Confirmed = {
  /** The size beyond standard, in nanometres. */
  size: Length,
  /** Who confirmed it; may be empty. */
  by: string, };

/** Whether a reading conforms to a limit, given how far the reading can be trusted (the word of ISO 14253-1, from memory). */
export type Conformity = "within" | "too-close" | "outside";

/** What a reading says about a limit. */
export type ConformityEntry = {
  /** Within, outside or between. */
  id: Conformity,
  /** In words, lower case. */
  words: string,
  /** Of a clearance to expect, in words. */
  of_what_comes: string, };

/** The answer to one line of a proposal. */
export type Consent = "yes" | "no" | "later";

/** An answer of the customer. */
export type ConsentEntry = {
  /** The answer. */
  id: Consent,
  /** In words, lower case. */
  words: string, };

/** How an engine is made; what is not known is none. */
export type Construction = {
  /** What takes the end thrust. */
  thrust?: ThrustBearing,
  /** What the camshaft runs in. */
  cam_bore?: CamBore,
  /** The wall of the cylinders. */
  bore_wall?: BoreWall,
  /** What cools them. */
  cooling?: Cooling,
  /** What the pistons run in. */
  cylinders?: Cylinders,
  /** What lights the charge. */
  ignition?: Ignition,
  /** How many heads a bank has. */
  heads?: Heads, };

/** What cools the cylinders. */
export type Cooling = "water" | "air";

/** A currency by its three letters (ISO 4217). */
export type Currency = string;

/** What the customer answered. */
export type CustomerAnswer = {
  /** The edit in which the proposal was made. */
  proposal: EditId,
  /** An answer for each line, where the proposal had no jobs. */
  lines?: Array<LineAnswer>,
  /** An answer for each job. */
  jobs?: Array<JobAnswer>,
  /** Who answered. */
  name: string,
  /** How: "signed on the screen", "by telephone". */
  way: string,
  /** When and whence, if it came by telephone or message. */
  afar?: FromAfar,
  /** The day on which it was noted, where the shop is. Unknown of what was answered before days were noted. */
  said?: Date,
  /** The signature, if it was drawn. */
  signature: Array<Array<[number, number]>>, };

/** What the pistons run in. */
export type Cylinders = "block" | "dry-sleeves" | "wet-liners" | "barrels";

/** A day that is in the calendar (Gregorian, years 1 to 9999), shown as ISO 8601 writes it: 2024-03-09. */
export type Date = string;

/** From which end of the new range wear counts. */
export type Datum = "min" | "max";

/** What to do about one part. */
export type Decision = {
  /** What stands: the person's decision, or else the rules'. */
  outcome: Outcome,
  /** What the rules say. */
  by_rules: Outcome,
  /** The person's reason, where they decided otherwise. */
  overruled_because: string | null,
  /** The way in which it is put right, where more than one serves: sleeved, welded up and reground. */
  way: Work | null,
  /** Every rule that applies, the deciding one first; before them a way that a person chose. */
  reasons: Array<Reason>,
  /** Whether anybody has looked at the part; a part that is renewed anyway has an outcome without a look. */
  looked_at: boolean,
  /** What a person may choose instead. */
  possible: Array<Outcome>, };

/** A line in which quote and estimate differ. */
export type Difference = {
  /** What it is for. */
  what: string,
  /** What was estimated; zero if it was not. */
  estimated: Money,
  /** What it costs now; zero if it is not needed. */
  now: Money,
  /** What it costs more; below zero if less. */
  more: Money,
  /** Why, in a sentence. */
  because: string, };

/** Across the part: two directions at right angles. */
export type Direction = "a" | "b";

/** A point on which published manuals disagree. */
export type Dispute = "pitted-tappets" | "ground-journals" | "big-ends" | "decks";

/** A point on which published manuals disagree. */
export type DisputeEntry = {
  /** The point. */
  id: Dispute,
  /** The question between the manuals. */
  question: string,
  /** The view that stands unless the shop chooses, with its source. */
  usual: string,
  /** The other view, with its source. */
  other: string, };

/** The papers. */
export type Document = "report-pdf" | "report-text" | "customers-pdf" | "customers-html" | "customers-png" | "customers-text" | "sizes-pdf" | "sizes-csv" | "list-pdf" | "list-text" | "list-csv" | "closing-pdf" | "evidence-pdf" | "machine-shop-pdf" | "parts-counter-pdf" | "labels-pdf" | "strip-down-order-pdf" | "goes-back-pdf";

/** Something drawn over a photo, with the edit that drew it. */
export type Drawn = {
  /** The edit, by which it can be undone. */
  edit: EditId,
  /** What was drawn. */
  markup: Markup, };

/** The id of an edit. Sorts by wall-clock milliseconds, then by a counter, then by device.
 *
 * Written as three groups of hexadecimal digits, `019ac2f1d3e8-0004-5f3a90c1b2d4e6f8`, so that the text sorts alike. */
export type EditId = string;

/** One end of the crankshaft. */
export type End = "front" | "rear";

/** Another engine beside the rebuild. */
export type EngineBeside = {
  /** Which, in the shop's words. */
  what: string,
  /** New or not. */
  state: PartState,
  /** What it costs without tax. */
  net: Money,
  /** The same with tax. */
  gross: Money,
  /** What the rebuild costs more, with tax; below zero where it costs less. */
  more: Money,
  /** The difference in a sentence. */
  words: string, };

/** A length as it was typed: the exact value with the text and unit in which it is shown back. In JSON a text with its
 * unit, such as `2.2483 in`, `57.11 mm`, `10 thou` or `3 µm`. */
export type Entry = string;

/** Why an action was refused. As JSON it is exactly these two fields. */
export type Error = {
  /** What kind: lower case words joined by hyphens. The page acts on it and never on the sentence. */
  code: string,
  /** What is wrong and what would be right. */
  message: string, };

/** A line of the estimate that the customer was given before the engine was opened. */
export type EstimateLine = {
  /** What it was for, in the shop's words. */
  what: string,
  /** The lines of a quote that it stands for; none for a line that no quote has (freight, a round sum). */
  of: Array<Charge>,
  /** How much, without tax. */
  net: Money, };

/** What the law of a place asks of an estimate. */
export type EstimateRules = {
  /** Beyond which excess the customer must be asked; none where nothing of the kind holds. */
  allowance?: Allowance,
  /** Whether old parts go back to the customer who asks for them. */
  old_parts: boolean, };

/** A group of like findings and its weight. */
export type Evidence = {
  /** In words: "scoring, grade 3, on 4 lower main shells". */
  words: string,
  /** The parts it was seen on; empty for what is known of the engine's past. */
  parts: Array<Part>,
  /** How much it changes the odds of the cause: the factor, as its base-2 logarithm rounded to a tenth. Positive
   * speaks for the cause. */
  weight: number,
  /** How strongly that is. */
  strength: Strength,
  /** Whether no other cause explains it: it would be unlikely without this one. */
  alone: boolean, };

/** The work of now costs more than the customer agreed to, and more than may be added without asking. */
export type Excess = {
  /** What the customer agreed to, with tax. */
  agreed: Money,
  /** What the work costs now, with tax; lines to which the customer said no or later are not in it. */
  now: Money,
  /** What may be added without asking. */
  allowed: Money,
  /** In sentences, with what to do. */
  words: string, };

/** How much of a report. */
export type Extent = "short" | "full";

/** A figure that follows from readings. */
export type Figure = {
  /** What. */
  quantity: Quantity,
  /** In words: "ring gap, top ring". */
  name: string,
  /** The station, where each station has its own figure. */
  station: Station | null,
  /** When in the rebuild. */
  phase: Phase,
  /** The smallest value, in nanometres. */
  low: Length,
  /** The largest value, in nanometres; the same as the smallest for a single value. */
  high: Length,
  /** The value as shown, rounded once. */
  shown: string,
  /** Where the deciding value was read; may be empty. */
  at: string,
  /** The expanded uncertainty, in nanometres; zero if no instrument was named. */
  uncertainty: Length,
  /** What it says about the limits; none if there is no limit, or if something must be known first. */
  verdict: Conformity | null,
  /** The limits in words: "0.0010 to 0.0040 in"; empty if there are none. */
  limits: string,
  /** The least and the most that is allowed, in nanometres, to be drawn; an open end sets no limit. */
  allowed: [Length | null, Length | null],
  /** The range of a new part at the size of this phase, in nanometres, as far as the sheet gives it. */
  new: [Length | null, Length | null],
  /** Why, in a sentence. */
  because: string,
  /** Who sets the limits; empty if nobody does. */
  source: string,
  /** The limits are a general rule's, for want of the manual's. */
  general: boolean, };

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

/** The surface wanted on the journals or bores of a group. */
export type Finish = {
  /** Of what. */
  of: SizeGroup,
  /** The finish, as the manual gives it: "16 microinch or finer"; may be empty. */
  surface: string,
  /** Of bores the angle of the hone's marks, and from what it is counted: manuals differ; may be empty. */
  hone_angle: string,
  /** The manual's page. */
  source: string, };

/** What must be noted of an answer that came by telephone or message, so that it counts (16 CCR 3356(e): date, time, name
 * and number). */
export type FromAfar = {
  /** The number that was called, or the address from which it was written. */
  number: string,
  /** The day, as the shop writes dates. */
  date: string,
  /** The time of day. */
  time: string, };

/** Which end of the crankshaft this engine's manual calls the front. */
export type FrontEnd = "away-from-flywheel" | "flywheel";

/** A general rule that stands because the sheet is silent, for a reader of the sheet. */
export type GeneralRule = {
  /** The kind of part. */
  kind: PartKind,
  /** The quantity. */
  quantity: Quantity,
  /** The limits in words: "at most 0.0005 in". */
  limits: string,
  /** "common practice", with what is known of where it comes from. */
  source: string, };

/** How an engine goes back to a customer who refuses the work. */
export type GoesBack = "put-together" | "in-boxes";

/** The grade of a tag. For scratches: 1 seen, not felt; 2 felt with a fingernail; 3 catches a fingernail; 4 metal gone
 * or moved. Every tag has its own four sentences ([`super::TagRow::grades`]). */
export type Grade = 1 | 2 | 3 | 4;

/** The plan of a group. */
export type GroupPlan = {
  /** The group. */
  group: SizeGroup,
  /** What is done. */
  action: Action,
  /** The same in words, lower case: "grind all to 0.010 in undersize". */
  words: string,
  /** The size that it has afterwards: zero is standard. None while it is open or when it is replaced. */
  size: Length | null,
  /** The size in words: "0.010 in undersize", "standard"; empty while it is open. */
  size_shown: string,
  /** The size that it had when found, in words. */
  found_shown: string,
  /** The finished diameter, smallest and largest, in nanometres. */
  finished: [Length, Length] | null,
  /** The finished diameter as shown. */
  finished_shown: string,
  /** The part that decides: the one that needs the most. */
  decided_by: Part | null,
  /** Why, in a sentence. */
  because: string,
  /** The person's reason, where they chose another size. */
  chosen_because: string | null,
  /** Whether all that it rests on has been looked at and measured, and nothing is too close to call. */
  settled: boolean,
  /** Why no listed size puts it right, in a sentence; none where one does, or where that is not known yet. */
  no_size: string | null,
  /** What is missing. */
  missing: Array<Missing>,
  /** Each part of the group. */
  parts: Array<PartPlan>,
  /** What should be looked at again about the group, each in a sentence. */
  notices: Array<string>, };

/** The upper or lower of two halves. Of a main bearing the lower half lies in the cap; of a rod the upper half lies in
 * the rod and the lower in the cap, as with the engine upright (common practice, also for V and flat engines). */
export type Half = "upper" | "lower";

/** Who does a piece of work. */
export type Hands = "here" | "machine-shop";

/** How many heads a bank has. */
export type Heads = "one" | "several" | "each-cylinder";

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
  /** What it is about, undoing what was undone; none of what this version does not know. */
  topic: Topic | null,
  /** The part it is about, if it is about one. */
  part: Part | null,
  /** Whether it has been taken back. */
  undone: boolean,
  /** Whether it can be taken back: what stands and is not itself about undoing. */
  undoable: boolean,
  /** The undo that took it back; undoing that does it again. */
  again: EditId | null,
  /** Why it has no effect, if it has none. */
  no_effect: NoEffect | null,
  /** Whether another entry was made under the same number on a copy of the folder: both stay. */
  of_a_copy: boolean, };

/** What lights the charge. */
export type Ignition = "spark" | "compression";

/** What came of it, of a job or of a whole shop. */
export type Imported = {
  /** The jobs. */
  jobs: Array<JobId>,
  /** Entries that were refused, for no entry is so: each reason with how many. */
  refused: Array<RefusedEntries>,
  /** How many jobs of a shop were passed over, for they were put away here. */
  put_away: number,
  /** How many jobs of a shop stand in an earlier archive, and are not here. */
  elsewhere: number,
  /** Things of the shelf that are kept beside those here, under these names: it is not known which is later. */
  beside: Array<string>,
  /** Files of a folder that can't be read: each why. */
  unread: Array<string>, };

/** An instrument of the shop, as known to a job. Correcting it corrects all readings that were taken with it in that
 * job; an instrument that was set anew in the middle of a job is entered as another. */
export type Instrument = {
  /** How readings refer to it. */
  id: InstrumentId,
  /** What the shop calls it. */
  name: string,
  /** What it is. */
  kind: InstrumentKind,
  /** The smallest step that can be read off it. */
  resolution: Entry,
  /** Expanded uncertainty of one reading, about 95 % (k = 2). */
  uncertainty: Entry,
  /** What it shows at zero or on its setting standard, too much being positive: it is taken off every reading. */
  zero_error?: Entry,
  /** The ball between anvil and shell, taken off every reading (TM 55-1905-221-14-3 p. 6-490: thickness is the reading
   * less the ball). */
  ball?: Entry,
  /** When it was last checked, as the shop writes dates. */
  checked?: string, };

/** The name under which readings refer to an instrument, such as `mic-2`: letters, digits and hyphens. */
export type InstrumentId = string;

/** What kind of instrument. */
export type InstrumentKind = "micrometer" | "ball-micrometer" | "depth-micrometer" | "bore-gauge" | "telescoping-gauge" | "caliper" | "dial-indicator" | "feeler-gauge" | "plastic-strip" | "other";

/** A kind of measuring instrument. */
export type InstrumentKindEntry = {
  /** The kind. */
  id: InstrumentKind,
  /** In words, lower case. */
  name: string,
  /** What such an instrument usually achieves where it reads in inches: common practice. */
  inch: Usual,
  /** The same where it reads in millimetres. */
  millimetre: Usual, };

/** The key of an item. No size stands in it: what was ordered or sent must survive a new reading. */
export type ItemKey = { "of": "order",
  /** The kind. */
  kind: PartKind,
  /** Where one kind is wanted in several sizes at once: those of this size. Else empty: all of the kind. */
  parts?: Array<Part>, } | { "of": "machine",
  /** The kind. */
  kind: PartKind,
  /** What is done to them; none where an old entry did not tell. */
  work?: Work | null, } | { "of": "part",
  /** On which list. */
  list: ListKind,
  /** The part. */
  part: Part, } | { "of": "put-right",
  /** The cause's written form. */
  cause: string,
  /** The written form of what it asks for. */
  check: string, } | { "of": "standing",
  /** Which. */
  standing: Standing, } | { "of": "own",
  /** The edit that put it there. */
  edit: EditId, } | { "of": "former",
  /** On which list, as far as it can be told. */
  list: ListKind,
  /** The words. */
  words: string, };

/** A step of an item. */
export type ItemStep = {
  /** Which. */
  step: Step,
  /** In a word: "Ordered", "Came". */
  words: string,
  /** How many have taken it. */
  done: number,
  /** When the last of them did, as the shop writes dates; may be empty. */
  date: string, };

/** The answer to one job of a proposal. */
export type JobAnswer = {
  /** The job. */
  of: JobScope,
  /** The answer. */
  answer: Consent, };

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
  /** The engine's number; may be empty. */
  number: string,
  /** The arrangement in words, once entered. */
  engine: string | null,
  /** When it was last changed: milliseconds since 1970-01-01 UTC. */
  changed_at: number,
  /** When it was closed: milliseconds since 1970-01-01 UTC; none while it is open. */
  closed_at: number | null,
  /** Whether the customer refused the work. */
  refused: boolean,
  /** Parts that were looked at. */
  looked: number,
  /** Parts of the engine. */
  parts: number,
  /** Photos taken in. */
  photos: number,
  /** What it waits for, in the order in which a bench takes it up. */
  waits: Array<Waiting>,
  /** Whether some of its entries can't be read. */
  damaged: boolean, };

/** The jobs that were asked for. */
export type JobList = {
  /** Those that are open. */
  open: Lines,
  /** Those that are closed. */
  finished: Lines,
  /** What came of the recovery of a damaged database, if there was one. */
  recovery: Recovery | null,
  /** When something was last entered here, if that is more than a day after what the clock says now. */
  clock_back: number | null,
  /** Since when what was entered is in no backup, if that is more than a week. */
  backup_due: number | null,
  /** Why the last backup failed, if it did. */
  backup_failed: string | null, };

/** What a job is about. Every line of a bill belongs to one. */
export type JobScope = "bearings" | "cylinders" | "block" | "valve-gear" | "oil-and-drives" | "further" | "assembly";

/** A job of a bill. */
export type JobScopeEntry = {
  /** What it is about. */
  id: JobScope,
  /** Its title. */
  title: string, };

/** A job, whole. */
export type JobView = {
  /** The job. */
  job: JobId,
  /** The lines of its sheet that are filled in. */
  texts: { [key in TextField]?: string },
  /** What is known of the engine's past. */
  history: { [key in HistoryFact]?: Answer },
  /** What the customer complained of. */
  complaints: Array<Complaint>,
  /** What came with the engine. */
  ancillaries: Array<Ancillary>,
  /** The layout, once entered. */
  arrangement: Arrangement | null,
  /** The engine drawn as a plan, once the layout is entered. */
  plan: Plan | null,
  /** The shop's instruments, as far as this job knows them. */
  instruments: Array<Instrument>,
  /** What the engine's manual says. */
  sheet: Sheet,
  /** The same in words. */
  sheet_words: SheetWords,
  /** What general rules give where the sheet is silent. */
  general_rules: Array<GeneralRule>,
  /** To which size a group had been ground or bored before; standard where nothing is noted. */
  found_sizes: { [key in SizeGroup]?: string },
  /** The marks by which shells are graded, read off housings and journals. */
  grade_marks: { [key in Part]: string },
  /** The main bores whose caps are renewed. */
  renewed_caps: Array<Part>,
  /** The photos that were picked for the customer. */
  shown_photos: Array<[Part, PhotoId]>,
  /** Sizes that the machinist confirmed. */
  confirmed_sizes: { [key in SizeGroup]?: Confirmed },
  /** Sizes that a person chose. */
  chosen_sizes: { [key in SizeGroup]?: string },
  /** What this job is charged at. */
  prices: PriceList,
  /** The estimate that the customer was given before the engine was opened. */
  estimate: Array<EstimateLine>,
  /** What stands before anything is opened. */
  strip_down: StripDownView,
  /** That the customer refused the work, if so. */
  refusal: Refusal | null,
  /** When the job was closed: milliseconds since 1970-01-01 UTC; none while it is open. */
  closed_at: number | null,
  /** All that follows. */
  assessment: Assessment,
  /** The edit that undo would take back. */
  last_edit: EditId | null,
  /** The undo that redo would take back. */
  redo: EditId | null,
  /** What undo would take back, in words. */
  last_said: Said | null,
  /** What redo would do again, in words. */
  redo_said: Said | null, };

/** One of the two groups of journals on a crankshaft: each is ground to one size. */
export type Journals = "mains" | "crankpins";

/** What is asked of the screen. */
export type KeepAwake = {
  /** Whether it shall stay lit. */
  on: boolean, };

/** What is not in it. */
export type Kept = {
  /** Photos of the job whose files are missing or damaged: the rest has left without them. */
  left_out: number, };

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
  /** What can be done about it, mildest first; nothing where it is only recorded. */
  outcomes: Array<Outcome>,
  /** The work that may be done to it and has a price. */
  works: Array<WorkEntry>,
  /** Whether it is renewed whatever it looks like. */
  always_renewed: boolean,
  /** Whether a manual may tell intake and exhaust apart. */
  is_by_port: boolean,
  /** What it is usually made of, where it may be measured warm. */
  material: Material | null,
  /** The kinds that are walked with the same instrument in the hand, in the order of the walk; may be empty. */
  walked_with: Array<PartKind>,
  /** What is measured of it in the order of measuring, then what follows. */
  quantities: Array<QuantityEntry>,
  /** How it is looked at, in a sentence, where it is only recorded; else empty. */
  look: string, };

/** What labels are printed on. */
export type LabelStock = "sheet" | "roll";

/** Where a label leads. */
export type Labelled = {
  /** The job. */
  job: JobId,
  /** The part of its engine. */
  part: Part, };

/** What has to be done about something missing. */
export type Lack = "reading" | "look" | "sheet";

/** How the cylinders stand to each other. */
export type Layout = "inline" | "vee" | "flat";

/** A price as it was charged last. */
export type LearntPrice = {
  /** The price. */
  price: Price,
  /** Its currency. */
  currency: Currency,
  /** When it was entered: milliseconds since 1970-01-01 UTC. */
  at: number,
  /** The job from which it comes: its customer and machine, as far as they were entered. */
  from: string,
  /** In how many jobs a price for this was entered. */
  jobs: number, };

/** A length in whole nanometres. Signed, since a reading may be an offset. In JSON a whole number of nanometres. */
export type Length = number;

/** A unit in which lengths are typed. */
export type LengthUnit = "millimetre" | "micrometre" | "inch" | "thou";

/** One line of a sheet. At least one of minimum, maximum, limit and rate is given. */
export type Line = {
  /** What it is about. */
  of: LineKey,
  /** The smallest size of a new part. */
  min?: Stated,
  /** The largest size of a new part. */
  max?: Stated,
  /** How far it may wear: the least for what wear makes smaller, the most for what wear makes larger. Without it the
   * range of a new part is the limit. */
  limit?: Stated,
  /** A part exactly at the limit fails ("replace at 0.25 or more"); else it passes. */
  fails_at_limit?: boolean,
  /** The limit is the least allowed although this quantity wears larger, or is one of the manual's own, which are
   * taken to wear larger. */
  limit_is_least?: boolean,
  /** A limit in proportion to another size. */
  rate?: Rate,
  /** For wear and losses: from which end of the new range they count. Without it both are worked out, and where they
   * disagree the answer is open. */
  datum?: Datum,
  /** The manual's page, or "common practice". */
  source: string, };

/** One line's answer, where a proposal was made before there were jobs. */
export type LineAnswer = {
  /** The line of the proposal. */
  of: Charge,
  /** The answer. */
  answer: Consent, };

/** What a line is about. Lines that name a station, a port or numbers go before lines that do not. */
export type LineKey = {
  /** The kind of part. */
  kind: PartKind,
  /** The quantity. */
  quantity: Quantity,
  /** The name of a quantity of the manual's own; else empty. */
  name?: string,
  /** Only at this station: one of the rings, say. */
  station?: Station,
  /** Only at intake or exhaust. */
  port?: Port,
  /** Only at these mains, crankpins, cylinders or cam bearings; all if empty. */
  numbers?: Array<number>, };

/** A line in words. */
export type LineWords = {
  /** What it is about, besides the kind of part: "ring gap, top ring". */
  aspect: string,
  /** The range of a new part: "2.999 to 3.000 in"; may be empty. */
  new: string,
  /** How far it may wear: "at most 0.0015 in"; may be empty. */
  worn: string, };

/** Some jobs of a kind. */
export type Lines = {
  /** The latest changed ones. */
  lines: Array<JobLine>,
  /** How many there are of which this is so. */
  found: number, };

/** A link of the chain from the way in to the complaint. */
export type Link = {
  /** Which link: "How it got in". */
  head: string,
  /** In words. */
  words: string, };

/** One line of a list. */
export type ListItem = {
  /** What a tick of it is kept under, with what it asks for now. */
  asked: Asked,
  /** What, in words. */
  what: string,
  /** Size or work in words; may be empty. */
  detail: string,
  /** How many. */
  quantity: number,
  /** The parts it is about, to go to the finding; may be empty. */
  parts: Array<Part>,
  /** What put it there. */
  because: string,
  /** Not to be done yet, and why, each in a sentence; empty if nothing holds it. */
  waits_for: Array<string>,
  /** To what is done what, by which it is priced and agreed to; none of what has no price of its own. */
  of: Charge | null,
  /** Who does it; none of what is not work. */
  hands: Hands | null,
  /** What the hand that does it must mind; may be empty. */
  mind: string,
  /** What can hurt in doing it, as far as no line above says it; the gravest first. */
  cautions: Array<Caution>,
  /** Whether it came back, was measured and is right: then it is behind, whatever was ticked. */
  is_right: boolean,
  /** How it is supplied and where the old parts go; none of what is not ordered. */
  supply: Supply | null,
  /** What the customer said to it in the last answer; none before there was one, and where nothing was asked. */
  consent: Consent | null,
  /** What has been done about it. */
  tick: Tick | null,
  /** The steps that it takes, in order; none of what is simply done. */
  steps: Array<ItemStep>,
  /** The pieces of which a test tells whether they pass; none of what is no test. */
  tested: Array<Part>, };

/** Which list. */
export type ListKind = "order" | "machine-shop" | "rebuild-here" | "clean" | "look-again" | "put-right";

/** How light or dark the page is. */
export type Look = "device" | "light" | "dark";

/** A file of ours. */
export type Made = {
  /** The action that makes it. */
  by: Makes,
  /** What that action is told. */
  with: object, };

/** What was found that makes a complaint. */
export type MadeBy = {
  /** What it is: "worn or failed main bearing". */
  words: string,
  /** The worst places: "Main 3, journal; Main 3, lower shell and 2 more". */
  at: string,
  /** All places. */
  parts: Array<Part>, };

/** The actions of which the file may leave. */
export type Makes = "document_get" | "archive_export" | "sheet_export" | "shop_export" | "photo_get";

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

/** Something drawn over a photo. Places are points from left to right and top to bottom of the upright picture, each
 * from edge to edge 0 to 10 000. */
export type Markup = { "shape": "outline",
  /** Its points, in order. */
  points: Array<[number, number]>,
  /** What is to be seen there; may be empty. */
  note: string, } | { "shape": "arrow",
  /** Its tail. */
  from: [number, number],
  /** Its tip. */
  to: [number, number],
  /** What is to be seen there; may be empty. */
  note: string, } | { "shape": "note",
  /** The place. */
  at: [number, number],
  /** What is to be seen there. */
  note: string, };

/** What a part is made of, for its growth with warmth. */
export type Material = "steel" | "cast-iron" | "aluminium";

/** What a part is made of. */
export type MaterialEntry = {
  /** The material. */
  id: Material,
  /** In words, lower case. */
  words: string, };

/** Something without which a plan is not settled. */
export type Missing = {
  /** What has to be done. */
  lack: Lack,
  /** The part that it is about; none where it is about the sheet. */
  part: Part | null,
  /** Its name; empty where it is about the sheet. */
  label: string,
  /** In a sentence without the name. */
  words: string, };

/** An amount in minor units of a currency that stands beside it: cents, or whole yen. */
export type Money = number;

/** How much a job is needed, least first. */
export type Need = "may" | "should" | "must";

/** How much a job of a proposal is needed. */
export type NeedEntry = {
  /** How much. */
  id: Need,
  /** In a word, lower case. */
  words: string, };

/** What to look at next, and why. */
export type NextLook = {
  /** The part. */
  part: Part,
  /** The zone of its drawing that matters most, if one does. */
  zone: Zone | null,
  /** The tag whose zones are to be marked; none if the part has not been looked at at all. */
  tag: Tag | null,
  /** Whether it is to be measured rather than looked at. */
  measure: boolean,
  /** The instruction with its reason. */
  sentence: string,
  /** By how much the look is expected to reduce what is not known, in bits. */
  gain: number, };

/** Why an edit has no effect on its job. It is kept and shown in the history all the same. */
export type NoEffect = { "why": "closed" } | { "why": "ahead" } | { "why": "unfit",
  /** In a sentence. */
  reason: string, };

/** What was done about an item that is not, or no longer so, on any list. */
export type NotWanted = {
  /** The item, as it was asked for. */
  asked: Asked,
  /** In words, with the size for which it was done. */
  words: string,
  /** How it stands, in a sentence. */
  because: string,
  /** What has been done about it. */
  tick: Tick, };

/** Something that came with the engine, as it is noted. */
export type NotedAncillary = {
  /** What. */
  what: string,
  /** In which state, or anything else worth knowing; may be empty. */
  remark: string, };

/** For actions that need to be told nothing, or have nothing to tell. */
export type Nothing = Record<symbol, never>;

/** How cylinders are numbered. */
export type Numbering = {
  /** The end where cylinder 1 is. */
  from: End,
  /** How the count passes over two banks; without effect in an in-line engine. */
  banks: Banks,
  /** The bank of cylinder 1; without effect in an in-line engine. */
  first_bank: Bank, };

/** Where a part goes that is renewed. */
export type OldPart = "customer" | "exchange" | "scrap" | "evidence";

/** Where an old part goes. */
export type OldPartEntry = {
  /** Where to. */
  id: OldPart,
  /** In words, lower case. */
  words: string, };

/** What a person told of the engine as it came in: customer, past, layout, marks. */
export type OnIntake = { "do": "fill",
  /** Which line. */
  field: TextField,
  /** What was typed. */
  text: string, } | { "do": "recall",
  /** The question. */
  fact: HistoryFact,
  /** The answer. */
  answer: Answer, } | { "do": "complain",
  /** Of what. */
  complaint: Complaint,
  /** Whether the customer does. */
  told: boolean, } | { "do": "arrange",
  /** The whole layout. */
  arrangement: Arrangement, } | { "do": "note-mark",
  /** On what. */
  place: MarkPlace,
  /** The marks. */
  mark: Mark, } | { "do": "add-ancillary",
  /** What. */
  item: NotedAncillary, } | { "do": "remove-ancillary",
  /** The edit that noted it. */
  item: EditId, } | { "do": "photograph-ancillary",
  /** The edit that noted it. */
  item: EditId,
  /** The photo's content, in place of one before; none takes it off, and the picture itself is kept. */
  photo: PhotoId | null, } | { "do": "give-back",
  /** The edit that noted it. */
  item: EditId,
  /** Given back. */
  given: boolean, };

/** What was done to the whole job. */
export type OnJob = { "do": "close",
  /** Closed. */
  closed: boolean, } | { "do": "refuse",
  /** In which way. */
  goes_back: GoesBack,
  /** The day, where the shop is. */
  made?: Date, } | { "do": "undo",
  /** The edit. */
  edit: EditId, };

/** What was done about items of the lists, and items of the shop’s own. */
export type OnList = { "do": "tick",
  /** The item, as it was asked for. */
  item: Asked,
  /** What has been done. */
  tick: Tick, } | { "do": "add-item",
  /** The item. */
  item: OwnItem, } | { "do": "price-item",
  /** The edit that put it on its list. */
  item: EditId,
  /** What one of it costs without tax; none takes the price off. */
  price: Money | null, } | { "do": "supply-parts",
  /** The kind. */
  kind: PartKind,
  /** How, and where to. */
  supply: Supply, } | { "do": "give-work",
  /** What is done to what. */
  of: PriceKey,
  /** Who does it. */
  hands: Hands, };

/** What the shop charges, what it estimated and proposed, and what the customer answered. */
export type OnMoney = { "do": "use-prices",
  /** The prices. */
  prices: PriceList, } | { "do": "set-price",
  /** The price. */
  price: Price, } | { "do": "note-estimate",
  /** Its lines. */
  lines: Array<EstimateLine>, } | { "do": "note-other-engines",
  /** The engines. */
  engines: Array<OtherEngine>, } | { "do": "propose",
  /** What was shown. */
  quote: Quote,
  /** The day, where the shop is, as ISO 8601 writes it: 2026-05-03. Unknown of what was proposed before it was noted. */
  made?: Date,
  /** What the customer read beside the jobs. The program writes it when the proposal is made; not kept of what was
   * proposed before it did. */
  page?: ProposedPage, } | { "do": "answer-proposal",
  /** The answer. */
  answer: CustomerAnswer, } | { "do": "order-strip-down",
  /** What was shown. */
  order: StripDownOrder,
  /** The day, where the shop is. */
  made?: Date, } | { "do": "answer-strip-down",
  /** The answer. */
  answer: StripDownAnswer, };

/** What a person did to one part: photos, tags, remarks, a decision of their own. */
export type OnPart = { "do": "add-photo",
  /** The part. */
  part: Part,
  /** The photo's content. */
  photo: PhotoId,
  /** How sharp it is, the higher the sharper; not said by those who have not measured it. */
  sharpness?: number, } | { "do": "remove-photo",
  /** The part. */
  part: Part,
  /** The photo's content. */
  photo: PhotoId, } | { "do": "mark-up",
  /** The part. */
  part: Part,
  /** The photo's content. */
  photo: PhotoId,
  /** What was drawn. */
  markup: Markup, } | { "do": "show-photo",
  /** The part. */
  part: Part,
  /** The photo's content. */
  photo: PhotoId,
  /** Whether it is shown. */
  shown: boolean, } | { "do": "tag",
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
  part: Part, } | { "do": "clean-back",
  /** The shell. */
  part: Part,
  /** Whether it is. */
  clean: boolean, } | { "do": "remark",
  /** The part. */
  part: Part,
  /** What was written. */
  text: string, } | { "do": "read-mark",
  /** The housing, rod or journal that it is stamped for. */
  part: Part,
  /** The mark. */
  mark: string, } | { "do": "renew-cap",
  /** The main bore. */
  part: Part,
  /** Whether it is. */
  renewed: boolean, } | { "do": "overrule",
  /** The part. */
  part: Part,
  /** What is to be done. */
  outcome: Outcome,
  /** Why. */
  reason: string, } | { "do": "follow-rules",
  /** The part. */
  part: Part, };

/** What a person measured, and with what. */
export type OnReading = { "do": "note-instrument",
  /** The instrument. */
  instrument: Instrument, } | { "do": "measure",
  /** The reading. */
  reading: Reading, };

/** What a person entered of the engine’s manual. */
export type OnSheet = { "do": "use-sheet",
  /** The sheet. */
  sheet: Sheet, } | { "do": "head-sheet",
  /** The head. */
  head: SheetBasis, } | { "do": "state-line",
  /** The line. */
  line: Line, } | { "do": "drop-line",
  /** What it was about. */
  of: LineKey, } | { "do": "state-undersize",
  /** The undersize. */
  undersize: Undersize, } | { "do": "drop-undersize",
  /** Of which journals. */
  journals: Journals,
  /** Which. */
  size: Entry, } | { "do": "state-oversize",
  /** The oversize. */
  oversize: Oversize, } | { "do": "drop-oversize",
  /** Of what; of cylinders if not given. */
  of?: Oversized,
  /** Which. */
  size: Entry, } | { "do": "state-grade",
  /** The row. */
  grade: ShellGrade, } | { "do": "drop-grade",
  /** Of which journals. */
  journals: Journals,
  /** The mark of the housing. */
  housing: string,
  /** The mark of the journal. */
  journal: string, } | { "do": "state-finish",
  /** The finish. */
  finish: Finish, };

/** Which size was found or chosen, and which way is gone. */
export type OnSize = { "do": "found-size",
  /** The group. */
  group: SizeGroup,
  /** The size; nothing for standard. */
  size: Entry | null, } | { "do": "choose-size",
  /** The group. */
  group: SizeGroup,
  /** The size; nothing to go back to the plan's own. */
  size: Entry | null,
  /** Why. */
  reason: string, } | { "do": "confirm-size",
  /** The group. */
  group: SizeGroup,
  /** The size, standard as 0; nothing takes the confirmation off. */
  size: Entry | null,
  /** Who confirmed it; may be empty. */
  by: string, } | { "do": "choose-way",
  /** The kind of part. */
  kind: PartKind,
  /** The way; nothing to go back to the plan's own. */
  way: Work | null,
  /** Why. */
  reason: string, };

/** One thing that is still open. */
export type Open = {
  /** The list on which it stands; none if it is on no list. */
  list: ListKind | null,
  /** The part that is to be measured again; none if it is not about one part. */
  part: Part | null,
  /** Where it is settled. */
  at: OpenAt,
  /** In a sentence. */
  words: string, };

/** Where something that is still open is settled. */
export type OpenAt = "list" | "part" | "approval" | "strip-down" | "ancillaries";

/** One line of an order. */
export type OrderLine = {
  /** The kind of part; of shells a pair each bearing. */
  kind: PartKind,
  /** What, in words: "main bearing shells, pairs". */
  what: string,
  /** The size beyond standard, in nanometres; none while it is not known. */
  size: Length | null,
  /** The size in words: "0.010 in undersize", "size not known yet". */
  size_shown: string,
  /** The parts that it is for: of shells those that run on the journals of this size. */
  parts: Array<Part>,
  /** How many: pairs of shells, pistons, sets of rings. */
  quantity: number,
  /** Of standard shells the grade for each bearing, where the sheet grades them; else empty. */
  grades: Array<ShellsOfGrade>,
  /** Held or free. */
  state: OrderState,
  /** What it waits for, each in a sentence; empty if it is free. */
  waits_for: Array<string>, };

/** Whether a line may be ordered. */
export type OrderState = "held" | "free";

/** Whether a line may be ordered. */
export type OrderStateEntry = {
  /** The state. */
  id: OrderState,
  /** In words, lower case. */
  words: string, };

/** A strip-down order as it was shown, with its answer. */
export type OrderedStripDown = {
  /** The edit that made it. */
  edit: EditId,
  /** Exactly what was shown. */
  order: StripDownOrder,
  /** The day on which it was made; none where it was not noted. */
  made: Date | null,
  /** The last answer to it. */
  answer: StripDownAnswer | null, };

/** Another engine that could take the place of this one. */
export type OtherEngine = {
  /** Which, in the shop's words. */
  what: string,
  /** New or not. */
  state: PartState,
  /** What it costs without tax, as complete as the rebuilt one. */
  net: Money, };

/** What another engine would cost. */
export type OtherEngines = {
  /** The engines, the cheapest first. */
  engines: Array<EngineBeside>,
  /** Where the rebuild costs more than one of them, that it does, in a sentence; else empty. */
  verdict: string,
  /** Where the shop should enter what one costs, why, in a sentence; else empty. For no paper. */
  ask: string, };

/** An outcome, from mild to severe. *Can't say yet* stands above the milder ones, which can't be trusted before the
 * missing look or reading, and below machining and renewal, which stand whatever is still to be seen. */
export type Outcome = "put-back" | "clean" | "rebuild-here" | "polish" | "cant-say" | "machine" | "replace";

/** What can be done. */
export type OutcomeEntry = {
  /** The outcome. */
  id: Outcome,
  /** In words, lower case. */
  words: string, };

/** What was recorded of something beside the judged parts: it is told as a part is, but nothing is measured of it or
 * decided about it. */
export type OutsideView = {
  /** What it is. */
  part: Part,
  /** Its kind. */
  kind: PartKind,
  /** What a mechanic calls it. */
  label: string,
  /** The piece by whose label it goes; none of what is not kept. */
  piece: Piece | null,
  /** Looked at or not, and what was seen. */
  seen: Seen,
  /** The worst grade that was tagged. */
  worst: Grade | null,
  /** The tags, worst first. */
  findings: Array<Finding>,
  /** Photos in the order taken in. */
  photos: Array<PhotoId>,
  /** What is drawn over them, in the order in which it was drawn; photos with nothing on them are left out. */
  drawn: { [key in PhotoId]: Array<Drawn> },
  /** The remark; empty if none. */
  note: string,
  /** What can hurt with it in the hand, the gravest first. */
  cautions: Array<Caution>, };

/** An oversize: the range to which cylinders are bored or tappet bores reamed, and the piston or tappet that goes with it. */
export type Oversize = {
  /** Of what; of cylinders if not given. */
  of?: Oversized,
  /** How much above standard: 0.020 in. */
  size: Entry,
  /** The smallest finished bore; standard plus the oversize if not given. */
  min?: Stated,
  /** The largest finished bore; standard plus the oversize if not given. */
  max?: Stated,
  /** The smallest new piston or tappet; standard plus the oversize if not given. */
  piston_min?: Stated,
  /** The largest new piston or tappet; standard plus the oversize if not given. */
  piston_max?: Stated,
  /** The manual's page. */
  source: string, };

/** What is brought to an oversize. */
export type Oversized = "cylinders" | "tappets";

/** An item of the shop's own. */
export type OwnCharge = {
  /** The edit that put it on its list, as text. */
  own: string, };

/** An item of the shop's own: gaskets, fasteners. */
export type OwnItem = {
  /** On which list. */
  list: ListKind,
  /** What. */
  what: string,
  /** How many. */
  quantity: number,
  /** Why. */
  because: string,
  /** What one of it costs without tax; none where that is not known yet. */
  price?: Money,
  /** The job with which the customer agrees to it; among the further items if not given. */
  scope?: JobScope, };

/** A size of paper. */
export type PaperSize = "a4" | "letter";

/** One part of one engine. */
export type Part = string;

/** A kind of part. */
export type PartKind = "main-shell" | "main-journal" | "housing-bore" | "thrust-face" | "rod-shell" | "crankpin" | "rod" | "piston" | "rings" | "bore" | "tappet" | "tappet-bore" | "pushrod" | "lobe" | "cam-journal" | "cam-bearing" | "camshaft" | "crankshaft" | "oil-pump" | "pump-gears" | "pump-body" | "pump-cover" | "oil-pickup" | "timing-drive" | "auxiliary-drive" | "auxiliary-shaft" | "auxiliary-bushes" | "auxiliary-gear" | "core-plugs" | "block" | "main-cap-bolts" | "rod-bolts" | "head-bolts" | "as-received" | "engine-oil" | "oil-filter" | "drain-plug" | "coolant" | "air-cleaner" | "oil-filler" | "breather" | "sump";

/** One part within the plan of its group. */
export type PartPlan = {
  /** The part. */
  part: Part,
  /** Its name. */
  label: string,
  /** The diameter as found, in words; empty if it was not measured. */
  found_shown: string,
  /** The size at which it cleans up: the worst diameter less wear, scratches and allowance, in nanometres. */
  cleans_up_at: Length | null,
  /** What is taken off or out on the diameter, from its worst place to the middle of the finished range; in
   * nanometres. */
  take_off: Length | null,
  /** The same in words; empty if nothing is taken off. */
  take_off_shown: string,
  /** Whether it is itself worn, out of form or damaged so that it can't stay: else it only goes along with its group. */
  at_fault: boolean,
  /** Whether it has light damage that may polish out. */
  polish: boolean,
  /** What is wrong with it as found, each in a sentence without its name. */
  faults: Array<string>,
  /** The size beyond standard of the shell or piston that goes with it, in nanometres; none while it is not known. */
  mate: Length | null,
  /** The same in words; empty while it is not known. */
  mate_shown: string, };

/** In what state a part is bought. What is not new is named so on every bill (16 CCR 3353(a)). */
export type PartState = "new" | "exchange" | "used";

/** In what state a part is bought. */
export type PartStateEntry = {
  /** The state. */
  id: PartState,
  /** In words, lower case. */
  words: string, };

/** One part with all that is known and concluded about it. */
export type PartView = {
  /** The part. */
  part: Part,
  /** Its kind. */
  kind: PartKind,
  /** What a mechanic calls it. */
  label: string,
  /** The piece by whose label it goes: itself, or what it stays on; none of what gets none. */
  piece: Piece | null,
  /** Looked at or not, and what was seen. */
  seen: Seen,
  /** The worst grade of damage. */
  worst: Grade | null,
  /** Whether it is a shell whose back was looked at and found clean. */
  back_clean: boolean,
  /** The tags, worst first. */
  findings: Array<Finding>,
  /** Photos in the order taken in. */
  photos: Array<PhotoId>,
  /** What is drawn over them, in the order in which it was drawn; photos with nothing on them are left out. */
  drawn: { [key in PhotoId]: Array<Drawn> },
  /** The remark; empty if none. */
  note: string,
  /** The readings, in the order in which they were taken; those that a later one at the same place replaced included. */
  readings: Array<ReadingView>,
  /** What follows from the readings. */
  figures: Array<Figure>,
  /** What can hurt with it in the hand, the gravest first. */
  cautions: Array<Caution>,
  /** What to do about it. */
  decision: Decision,
  /** What can hurt in doing that, as far as it is not said of the part. */
  work_cautions: Array<Caution>, };

/** Of what a rate is taken. */
export type Per = "diameter" | "length" | "over" | { "given": Entry };

/** When in the life of a rebuild something was measured. */
export type Phase = "found" | "machined" | "fitted";

/** A phase of the rebuild. */
export type PhaseEntry = {
  /** The phase. */
  id: Phase,
  /** In words. */
  label: string, };

/** The name of a photo's content: its SHA-256 as 64 hexadecimal digits. */
export type PhotoId = string;

/** How large a picture is asked for. */
export type PhotoSize = "thumb" | "screen" | "original";

/** How it went. */
export type Photographed = "taken" | "cancelled";

/** What is shown. */
export type PictureOf = { "photo": {
  /** Which. */
  photo: PhotoId,
  /** What was drawn over it. */
  markups: Array<Markup>, } } | { "zones": {
  /** Which drawing. */
  map: ZoneMap,
  /** The marked zones, each with the worst grade that was marked there. */
  marked: Array<[Zone, Grade]>, } };

/** A piece with a label of its own. */
export type Piece = {
  /** The part to which its label leads. */
  part: Part,
  /** What stands on it: "Main 3, upper shell", "Main 3, cap". */
  name: string, };

/** Of which pieces labels are wanted. */
export type Pieces = "all" | "machine-shop" | "not-looked-at" | { "of": Part };

/** A place at which a cause may be. */
export type PlaceView = {
  /** The place in words: "cylinder 3", "main 2", "crankpin 1". */
  label: string,
  /** The probability that the cause is at this place, 0 to 1. */
  probability: number,
  /** Whether the place is named with the cause. */
  named: boolean,
  /** The parts of the place that were looked at or measured. */
  parts: Array<Part>, };

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
  /** How it is drawn. */
  symbol: Symbol,
  /** A few letters to stand in the symbol, several words one below the other; empty where the column says enough. */
  mark: string,
  /** Which of two halves it is. */
  half: Half | null,
  /** Which way its valve lets the charge flow. */
  port: Port | null,
  /** The bank of its cylinder, where there are two. */
  bank: Bank | null, };

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
  /** What stands in each column, in words: the names of its kinds of part, one list each column. Empty where every
   * part is named by its mark. */
  column_heads: Array<Array<string>>,
  /** Row labels, front to rear, one each row; empty where a row needs none. */
  row_labels: Array<string>,
  /** The parts. */
  cells: Array<PlanCell>, };

/** Which way a valve lets the charge flow. */
export type Port = "intake" | "exhaust";

/** A clearance to expect. */
export type Predicted = {
  /** The journal, rod or piston at which it runs. */
  part: Part,
  /** Its name. */
  label: string,
  /** The smallest and largest that can come together, in nanometres. */
  worst_case: [Length, Length],
  /** The range within which it will almost surely lie, if every size varies by itself: root-sum-square, in nanometres. */
  likely: [Length, Length],
  /** Both in words. */
  worst_case_shown: string,
  /** The likely range in words. */
  likely_shown: string,
  /** The limits in words; empty if there are none. */
  limits: string,
  /** The worst case against the limits of a new clearance: *within* if every outcome is right, *outside* if none is,
   * else *too close to call*: measure the new parts. None without limits. */
  verdict: Conformity | null,
  /** Who sets the limits. */
  source: string,
  /** Where each size comes from, in a sentence. */
  because: string, };

/** The price of one piece; at least one of its three parts is given. */
export type Price = {
  /** What it is for. */
  of: PriceKey,
  /** What the part costs, without tax. */
  part: Money,
  /** What the machine shop charges, without tax. */
  machining: Money,
  /** The shop's own time in minutes. */
  minutes: number,
  /** Who usually does it for this shop; the trade's usual way if not given. */
  hands?: Hands, };

/** What a price is for. */
export type PriceKey = {
  /** The kind of part. Shells are priced by the pair, thrust faces by the set. */
  kind: PartKind,
  /** The work. */
  work: Work, };

/** The shop's prices, all without tax, in one currency. */
export type PriceList = {
  /** The currency. */
  currency: Currency,
  /** What an hour of the shop's own time costs. */
  hour: Money,
  /** The tax. */
  tax: Tax,
  /** The prices. */
  prices: Array<Price>,
  /** What stands on every bill, one line of each kind at most. */
  standing?: Array<StandingPrice>,
  /** What the law of the place asks of an estimate. */
  estimate_rules?: EstimateRules,
  /** For how many days a proposal holds, 1 to 365; not said if none. */
  valid_days?: number,
  /** What the shop usually asks for opening an engine; not said if none. */
  strip_down?: StripDownTerms, };

/** How much of the engine has been looked at. */
export type Progress = {
  /** Parts of the engine that ask for a look of their own. */
  parts: number,
  /** Parts that were looked at. */
  looked: number,
  /** Of these, parts with damage. */
  worn: number,
  /** Photos taken in. */
  photos: number, };

/** A job of a proposal, answered as a whole. */
export type ProposedJob = {
  /** What it is about: by this it is answered. */
  of: JobScope,
  /** Its number on the proposal, from 1. */
  number: number,
  /** Its title, as it was shown. */
  title: string,
  /** How much it is needed. */
  need: Need,
  /** Why, in a sentence: the finding that weighs most. */
  because: string,
  /** What happens if it is left, in a sentence. */
  if_left: string,
  /** Its lines of the bill, in their order. */
  lines: Array<Charge>,
  /** The sum of its lines that have a price, without tax. */
  net: Money,
  /** How many of its lines have no price yet. */
  without_price: number, };

/** The words and pictures of the customer's page that are read off the engine, not off the bill. */
export type ProposedPage = {
  /** What to do about the engine as a whole. */
  advice: string,
  /** What the customer told, each with what was found. */
  told: Array<ToldAndFound>,
  /** What was found, in sentences. */
  found: Array<string>,
  /** How it happened, from how it got in to what was noticed. */
  how: Array<Link>,
  /** What else is likely, each in a sentence. */
  besides: Array<string>,
  /** What was shown. */
  shown: Array<ProposedPicture>,
  /** Where there was more than one way. */
  choices: Array<Choice>,
  /** What the total was compared with, in sentences. */
  beside: Array<string>,
  /** What had not been examined. */
  not_examined: string, };

/** A photo, or a part that was drawn with its zones, with one sentence. */
export type ProposedPicture = {
  /** What it shows, in a sentence. */
  sentence: string,
  /** What it looks like, in words. */
  alt: string,
  /** What it is. */
  of: PictureOf, };

/** What a PDF is for. */
export type Purpose = "mail" | "archive" | "print";

/** A quantity of a part. Which part is meant, a quantity does not say: the *diameter* of a journal is outside, that of
 * a bore inside. */
export type Quantity = "diameter" | "out-of-round" | "taper" | "barrel" | "wear" | "run-out" | "bend" | "twist" | "scratch-depth" | "length" | "thrust-width" | "wall" | "thickness" | "clearance" | "strip" | "bearing-bore" | "line-offset" | "line-adjacent" | "line-overall" | "flatness-along" | "flatness-across" | "end-float" | "side-play" | "end-clearance" | "side-clearance" | "backlash" | "depth" | "cover-wear" | "big-end-bore" | "small-end-bore" | "pin-bore" | "pin-diameter" | "pin-clearance" | "groove-clearance" | "ring-gap" | "gap-growth" | "ridge" | "lobe-height" | "base-circle" | "lift" | "height-loss" | "lift-loss" | "lift-spread" | "tappet-bore" | "adjacent-run-out" | "adjacent-run-out-square" | "other";

/** A quantity as one kind of part has it. */
export type QuantityEntry = {
  /** The quantity. */
  id: Quantity,
  /** In words, lower case. */
  words: string,
  /** Whether a person reads it off an instrument; else it only follows. */
  is_read: boolean,
  /** Whether wear makes it smaller: a limit is then the least allowed, else the most. */
  wears_smaller: boolean,
  /** Where it is read, in the order in which a hand walks over the part. */
  spots: Array<SpotEntry>,
  /** How it is measured, in a sentence; may be empty. */
  how: string,
  /** What the directions A and B mean, in words. */
  directions: [string, string],
  /** Whether it is a size, which no small signed amount can be. */
  is_size: boolean,
  /** Whether it is read over a length, which must be told with it. */
  is_over_a_length: boolean,
  /** The quantities that are read together with it, part by part; may be empty. */
  read_with: Array<Quantity>, };

/** What the rebuild costs. */
export type Quote = {
  /** The currency of all amounts. */
  currency: Currency,
  /** The lines. */
  lines: Array<QuoteLine>,
  /** The jobs in which they are put to the customer; none in what was proposed before there were jobs: there each line
   * was one. */
  jobs?: Array<ProposedJob>,
  /** The sum of the lines that have a price, without tax. */
  net: Money,
  /** The tax on it. */
  tax: Money,
  /** The rate of tax, in words. */
  tax_rate: string,
  /** Both together. */
  gross: Money,
  /** How many lines have no price yet. */
  without_price: number,
  /** For how many days it holds once it is proposed; not said if none. */
  valid_days?: number, };

/** A line of a quote. */
export type QuoteLine = {
  /** What it is for. */
  of: Charge,
  /** In words: "Main bearing shells: replace". */
  what: string,
  /** The parts it is about. */
  parts: Array<Part>,
  /** How many pieces are charged: pairs of shells, else parts. */
  quantity: number,
  /** What one piece costs without tax; none if the shop has entered no price. */
  each: Money | null,
  /** What the line costs without tax; none without a price. */
  net: Money | null,
  /** Why: the reason of the decision that weighs most. */
  because: string,
  /** In what state the part is bought; none of what is no part, and in what was proposed before it was noted. */
  state?: PartState, };

/** A limit in proportion: so much for each so much of another size. */
export type Rate = {
  /** So much: 0.0004 in. */
  by: Entry,
  /** For each so much: 1 in. */
  per: Entry,
  /** Of what. */
  of: Per,
  /** Counted from the end of the new range (a clearance may exceed its high limit by so much), instead of from zero. */
  beyond_range?: boolean, };

/** What came back of one group, of the bores of tappets, or of what is brought to a size of its own. */
export type ReadBack = {
  /** The group; none of parts that go each by itself: bores of tappets, ends of rods. */
  group: SizeGroup | null,
  /** To what is done what. */
  of: PriceKey,
  /** What is read of each. */
  quantity: Quantity,
  /** Of what, in words, plural: "main journals". */
  label: string,
  /** What was asked for, in words. */
  asked: string,
  /** Every part has been measured as machined and is right. */
  confirmed: boolean,
  /** Each part. */
  parts: Array<ReadBackLine>, };

/** What came back of one part. */
export type ReadBackLine = {
  /** The part. */
  part: Part,
  /** Its name. */
  label: string,
  /** The size as found, in words; empty if it was not measured. */
  found_shown: string,
  /** The size as machined, in words; empty if it was not measured. */
  shown: string,
  /** Whether size and form are right; none before it is measured. */
  verdict: Conformity | null,
  /** What is wrong or missing, in a sentence without its name; empty if it is right. */
  problem: string, };

/** A reading, as it was taken. */
export type Reading = {
  /** Of which part. */
  part: Part,
  /** What was measured. */
  quantity: Quantity,
  /** The name of a quantity of the manual's own ([`Quantity::Other`]); else empty. */
  name?: string,
  /** Where on the part. */
  spot?: Spot,
  /** When in the rebuild; as found, if not said. */
  phase?: Phase,
  /** What the instrument showed. */
  value: Entry,
  /** What the instrument was set to, if the value is a difference from that (a bore gauge's dial). */
  set_to?: Entry,
  /** With what; without an instrument no uncertainty is allowed for. */
  instrument?: InstrumentId,
  /** The length over which a bend or twist was read. */
  over?: Entry,
  /** Where the high spot of a run-out stood, in whole degrees from any mark on the shaft, 0 to 359. */
  angle?: number,
  /** The part's warmth, if it was not at 20 °C. */
  warmth?: Warmth,
  /** The person was asked whether this odd value is right, and said yes. */
  sure?: boolean, };

/** One reading. */
export type ReadingView = {
  /** The edit that took it, by which it can be undone. */
  edit: EditId,
  /** What was measured. */
  quantity: Quantity,
  /** The name of a quantity of the manual's own; else empty. */
  name: string,
  /** Where. */
  spot: Spot,
  /** When in the rebuild. */
  phase: Phase,
  /** As it was entered. */
  value: string,
  /** The whole reading as it was taken, so that it can be given again as sure. */
  taken: Reading,
  /** Corrected, at 20 °C, in nanometres. */
  length: Length,
  /** With what; empty if no instrument was named. */
  instrument: string,
  /** Whether it stands: no later one was taken at its place. */
  stands: boolean,
  /** A question, if it is hard to believe. */
  doubt: string | null, };

/** Why. */
export type Reason = {
  /** The rule. */
  rule: RuleId,
  /** What it concludes. */
  outcome: Outcome,
  /** Why, in a sentence that names the finding. */
  because: string,
  /** The rule itself, in a sentence. */
  why: string,
  /** Where the rule comes from. */
  source: string, };

/** What came of the recovery of a damaged database. */
export type Recovery = {
  /** The folder with the damaged files, beside the database. */
  aside: string,
  /** How many entries were read. */
  entries: number,
  /** Of how many jobs. */
  jobs: number,
  /** How many of these may lack entries. */
  short: number, };

/** The customer refused the work. */
export type Refusal = {
  /** The edit that noted it; undoing it takes the job up again. */
  edit: EditId,
  /** How the engine goes back. */
  goes_back: GoesBack,
  /** The day; none where it was not noted. */
  made: Date | null, };

/** Entries that were refused for the same reason. */
export type RefusedEntries = {
  /** In a sentence. */
  reason: string,
  /** How many. */
  count: number, };

/** A rule by which parts are decided. */
export type RuleEntry = {
  /** Its written form. */
  id: string,
  /** Why, in a sentence. */
  why: string,
  /** Where it comes from. */
  source: string, };

/** A rule's written form, by which reasons name it. */
export type RuleId = string;

/** An edit as the page tells of it, when it is taken back, done again, or has taken something off. */
export type Said = {
  /** What was done. */
  sentence: string,
  /** Which kind of change it was, by which the page knows on which screen it was made. */
  does: string,
  /** The part it is about, if it is about one. */
  part: Part | null, };

/** A screen on which something is begun that can hurt, before any part is in the hand. Called as the page calls it. */
export type Screen = "intake" | "marks";

/** What can hurt in what is begun on a screen. */
export type ScreenCautions = {
  /** The screen. */
  screen: Screen,
  /** The gravest first. */
  cautions: Array<Caution>, };

/** Whether somebody has looked at a part, and what they saw. */
export type Seen = "not-looked" | "along" | "clean" | "worn";

/** A series of sizes in words. */
export type SeriesWords = {
  /** The group; none of the bores of tappets. */
  group: SizeGroup | null,
  /** Standard, as far as the sheet gives it; both are empty if it does not. */
  standard: SizeWords,
  /** The sizes beyond it, in the order of the sheet. */
  sizes: Array<SizeWords>, };

/** The shop's settings. What has not been set is empty. */
export type Settings = {
  /** The shop's name, for the head of its papers. */
  shop_name: string,
  /** The shop's address, one or more lines. */
  shop_address: string,
  /** The number at which the shop is called, for customers and machine shops. */
  shop_phone: string,
  /** Its own terms, for the sheet that is handed over at the end. */
  shop_conditions: string,
  /** Where the page was, to go back there after the system has closed the app. */
  last_screen: string,
  /** What papers are printed on. */
  paper: PaperSize,
  /** The words that it uses where the trade is split by country. */
  terms: Terms,
  /** How light or dark the page is. */
  look: Look,
  /** How large the page's text is, in per cent. */
  text_size: TextSize,
  /** Whether a single key goes to a screen or a step; unless said otherwise, it does. */
  keys: boolean, };

/** What shall be handed over. Files are named by what makes them: a page can name no path. */
export type Share = {
  /** Up to ten files. */
  files: Array<Made>,
  /** What it is called on the share sheet. */
  title: string,
  /** Words that go along; alone if there is no file. */
  text: string, };

/** How it went, as far as it can be known: no system tells whether the other program sent it on. */
export type Shared = "handed-over" | "cancelled";

/** A spec sheet. */
export type Sheet = {
  /** What it rests on: its title, source and rules of reading. */
  head: SheetBasis,
  /** Sizes and limits. */
  lines: Array<Line>,
  /** What journals can be ground to. */
  undersizes: Array<Undersize>,
  /** What cylinders can be bored to, and tappet bores reamed to. */
  oversizes: Array<Oversize>,
  /** How standard shells are graded by the marks of housing and journal; empty where they are not. */
  grades?: Array<ShellGrade>,
  /** What it asks of finished surfaces. */
  finishes?: Array<Finish>, };

/** What a spec sheet rests on: the manual, the unit, the allowance, and how its limits are held. */
export type SheetBasis = {
  /** What the shop calls it. */
  name: string,
  /** The manual it was taken from. */
  source: string,
  /** The unit in which results are shown, and in which a number typed without a unit is taken. */
  unit: LengthUnit,
  /** How much on the diameter the grinder or borer needs beyond the wear to clean up; zero if not given. */
  clean_up?: Stated,
  /** How much of an instrument's uncertainty keeps away from a limit, in per cent: 100 is the full expanded
   * uncertainty (ISO 14253-1, from memory); 82 is about the one-sided 95 % of its later edition (from memory). */
  guard_percent?: number,
  /** Whether general rules fill in what this sheet does not give. */
  general_rules?: boolean,
  /** Where published manuals disagree and the shop follows the view that is not the usual one. */
  otherwise?: Array<Dispute>, };

/** A field of a sheet of labels, from left to right and from top to bottom: the first that is still free. */
export type SheetField = number;

/** The sheet in words. */
export type SheetWords = {
  /** The lines, in the order of the sheet. */
  lines: Array<LineWords>,
  /** The series of each group, and that of the bores of tappets. */
  series: Array<SeriesWords>, };

/** The shelf. */
export type Shelf = {
  /** The shop's instruments, by id. */
  instruments: Array<Instrument>,
  /** The shop's spec sheets, by name. */
  sheets: Array<Sheet>,
  /** The shop's prices, once entered. */
  prices: PriceList | null, };

/** A row of the table: the marks that meet, and the grade of the standard shells that go between them. */
export type ShellGrade = {
  /** Of the shells of which journals. */
  journals: Journals,
  /** The mark of the housing: on the block for a main bearing, on the rod for a rod bearing. */
  housing: string,
  /** The mark of the journal on the crankshaft. */
  journal: string,
  /** The grade, as the parts counter knows it. */
  grade: string,
  /** The manual's page. */
  source: string, };

/** The bearings that take one grade. */
export type ShellsOfGrade = {
  /** The grade, as the sheet names it. */
  grade: string,
  /** The housings or rods in which they go, a pair in each. */
  housings: Array<Part>,
  /** The same in words: "Main 2", "Rod 3". */
  labels: Array<string>, };

/** A photo that the camera was asked for and that is not in its job yet. */
export type Shot = {
  /** By this name it is taken in or put away. */
  shot: ShotId,
  /** The job. */
  job: JobId,
  /** The part that it shows, */
  part: Part | null,
  /** or what came with the engine: the edit that noted it. */
  ancillary: EditId | null,
  /** What it shows, as a mechanic would call it. */
  label: string,
  /** Whose engine it is; may be empty. */
  customer: string,
  /** What the engine came out of; may be empty. */
  machine: string,
  /** When the camera was asked: milliseconds since 1970-01-01 UTC. */
  asked_at: number,
  /** Whether the photo is there; until then the camera is open. */
  taken: boolean, };

/** The name of a photo that the camera was asked for, before its content names it: 128 random bits, written as 32
 * hexadecimal digits. Its file is named so too; a page can name no other file by it. */
export type ShotId = string;

/** How a line of the quote differs from the last proposal. */
export type Since = {
  /** The line. */
  of: Charge,
  /** In words. */
  what: string,
  /** What changed, in a sentence. */
  because: string,
  /** Whether it is more than was proposed: then it must be asked anew. */
  exceeds: boolean, };

/** What is brought to one common size. */
export type SizeGroup = "mains" | "crankpins" | "bores";

/** A group that goes to one size. */
export type SizeGroupEntry = {
  /** The group. */
  id: SizeGroup,
  /** In words, plural. */
  label: string,
  /** Its kind of part. */
  kind: PartKind, };

/** A size of a series in words. */
export type SizeWords = {
  /** The diameter of the journal or bore. */
  own: string,
  /** The wall of the shell or the diameter of the piston. */
  mate: string, };

/** The sizes of a rebuild. */
export type Sizing = {
  /** What is done with each group, and why. */
  groups: Array<GroupPlan>,
  /** The clearance to expect at each position. */
  clearances: Array<Predicted>,
  /** What came back from the machine shop, beside what was asked for. */
  read_back: Array<ReadBack>,
  /** What is done about worn bores of tappets; none where there are none. */
  tappet_bores: TappetBores | null,
  /** What to order, in which size: held or free. */
  orders: Array<OrderLine>, };

/** A place on a part. A quantity that has but one place has neither station nor direction. */
export type Spot = {
  /** Along the part. */
  station?: Station,
  /** Across the part. */
  direction?: Direction, };

/** A place at which a quantity is read. */
export type SpotEntry = {
  /** The place. */
  spot: Spot,
  /** In words: "front, A"; empty for the only place. */
  label: string,
  /** Its station in words: "front"; empty where there is none. */
  station: string,
  /** Whether a set is incomplete without it. */
  needed: boolean, };

/** A line that stands on the bill whatever is found. */
export type Standing = "strip-down" | "assembly" | "gasket-set" | "fluids" | "test-run" | "freight" | "sundries";

/** A standing line. */
export type StandingCharge = {
  /** Which. */
  standing: Standing, };

/** A line that stands on every bill. */
export type StandingEntry = {
  /** Which. */
  id: Standing,
  /** In words. */
  words: string, };

/** What a standing line costs: an amount, time, a share of the rest of the bill, or several of them. */
export type StandingPrice = {
  /** Which line. */
  of: Standing,
  /** An amount without tax. */
  amount: Money,
  /** The shop's own time in minutes. */
  minutes: number,
  /** A share of all other lines, in hundredths of a per cent: 250 is 2.5 %. */
  share: number,
  /** When it applies. */
  applies: Applies, };

/** An ordinary engine. */
export type StartingPoint = {
  /** What it is called. */
  name: string,
  /** Its layout. */
  arrangement: Arrangement, };

/** A stated figure. In JSON a text: `2.998 in`, or with the manual's second column `2.998 in = 76.149 mm`.
 *
 * The first column counts; the second is kept, and the two must agree within the rounding of their last digits. Two
 * columns that disagree are a misprint of which nobody can say which half is right, so they are refused (sources of
 * such misprints: TM 5-4320-300-14 and TM 5-4310-354-14). */
export type Stated = string;

/** Along the part. */
export type Station = "front" | "middle" | "rear" | "top" | "bottom" | "top-ring" | "second-ring" | "third-ring" | "oil-ring";

/** A step of a line, in the order in which they are taken. */
export type Step = "sent" | "back" | "fitted";

/** How many of a line have taken a step. */
export type StepTaken = {
  /** Which step. */
  step: Step,
  /** How many; 6 of 8 may have come. */
  done: number,
  /** When the last of them did, as the shop writes dates; may be empty. */
  date: string, };

/** Steps of something under way. */
export type Steps = {
  /** How many are done. */
  done: number,
  /** How many there are, as far as is known; 0 while nothing is. */
  steps: number, };

/** A step of strength: those of Jeffreys' scale for the factor by which evidence changes the odds (1 to 3.2, to 10, to
 * 100, above), from memory; the words are ours. */
export type Strength = "slight" | "clear" | "strong" | "very-strong";

/** A step of how strongly evidence speaks. */
export type StrengthEntry = {
  /** The step. */
  id: Strength,
  /** The weight above which evidence is so strong, in doublings of the odds. */
  above: number,
  /** How it speaks, in words: "clearly". */
  words: string, };

/** What the customer answered to a strip-down order. */
export type StripDownAnswer = {
  /** The edit in which the order was made. */
  order: EditId,
  /** Whether the engine may be opened. */
  agreed: boolean,
  /** Who answered. */
  name: string,
  /** How: "signed on the screen", "by telephone". */
  way: string,
  /** When and whence, if it came by telephone or message. */
  afar?: FromAfar,
  /** The day on which it was noted, where the shop is. Unknown of what was answered before days were noted. */
  said?: Date,
  /** The signature, if it was drawn. */
  signature: Array<Array<[number, number]>>, };

/** A line of a strip-down order or of its bill. */
export type StripDownLine = {
  /** What it is for. */
  what: string,
  /** What it costs; none without a price. */
  sum: TaxedSum | null, };

/** What the customer agrees to before anything is opened. */
export type StripDownOrder = {
  /** The currency of all amounts. */
  currency: Currency,
  /** The tax on them. */
  tax: Tax,
  /** What is asked for it. */
  terms: StripDownTerms,
  /** Whether the customer wants old parts back; none if that was not asked. */
  old_parts?: boolean,
  /** The first estimate of the whole rebuild, with tax; none if none was given. */
  estimate?: Money,
  /** What came with the engine. */
  received?: Array<string>,
  /** Whatever else was agreed; may be empty. */
  remark: string, };

/** What a shop asks for opening an engine, without tax. What is not known has no price yet: none is made up. */
export type StripDownTerms = {
  /** Taking it apart and looking at it. */
  strip_down?: Money,
  /** Putting it back together if the work is refused. */
  put_together?: Money,
  /** Returning it in boxes if the work is refused. */
  in_boxes?: Money,
  /** Gaskets and seals that are destroyed by opening; may be empty. */
  destroyed: string,
  /** The most days until it is put back together or returned, 1 to 365; not said if none. */
  most_days?: number, };

/** What stands before anything is opened. */
export type StripDownView = {
  /** The order as it would be made now, on the shop's usual terms. */
  to_order: StripDownOrder,
  /** The order that was made, with its answer. */
  ordered: OrderedStripDown | null,
  /** What that costs. */
  lines: Array<StripDownLine>, };

/** How the parts of a kind are supplied; by default new, and nothing said of the old ones. */
export type Supply = {
  /** New or not. */
  state: PartState,
  /** What is laid down for each old part until it is returned, without tax; zero of what is no exchange. */
  deposit: Money,
  /** Where the old parts go; none where it is not said. */
  old: OldPart | null, };

/** The outline by which a part is drawn. */
export type Symbol = "shell-upper" | "shell-lower" | "journal" | "housing" | "thrust" | "rod" | "piston" | "rings" | "bore" | "lobe" | "tappet" | "pushrod" | "bush" | "item";

/** A kind of wear or damage. */
export type Tag = "scoring" | "embedded-debris" | "pitting" | "hot-spot" | "copper-showing" | "wiping" | "fatigue-cracks" | "lining-loss" | "corrosion" | "bright-back" | "rust" | "scuffing" | "spalling" | "dished-face" | "stuck-plunger" | "worn-nose" | "bent" | "seizure" | "cracks" | "deposits" | "handling-damage" | "looks-even" | "milky" | "fuel-smell" | "thickened" | "low-level" | "high-level" | "soft-flakes" | "aluminium-flakes" | "steel-flakes" | "steel-splinters" | "fine-paste" | "grit" | "by-passed" | "plugged" | "torn" | "missing" | "leak" | "oil-film" | "fumes";

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

/** For which shot. */
export type TakePhoto = {
  /** It was begun by the action `shot_begin`. */
  shot: ShotId, };

/** What is done about the worn ones. The others stay as they are. */
export type TappetBores = {
  /** How they are mended: `machine` is reamed, or `bush`. */
  way: Work,
  /** The size that they and their tappets have afterwards, beyond standard in nanometres; none while it is not known. */
  size: Length | null,
  /** The same in words: "0.010 in oversize", "standard"; empty while it is not known. */
  size_shown: string,
  /** The finished bore, smallest and largest, in nanometres; none if the sheet does not tell. */
  finished: [Length, Length] | null,
  /** The same in words; may be empty. */
  finished_shown: string,
  /** Why, in a sentence. */
  because: string,
  /** Why no oversize serves, in a sentence; empty where one does or none is known. */
  no_size: string,
  /** What holds the work, each in a sentence; empty if nothing does. */
  waits_for: Array<string>,
  /** Each worn bore. */
  bores: Array<WornBore>, };

/** The follower between cam and valve gear. */
export type Tappets = "flat-solid" | "flat-hydraulic" | "roller-solid" | "roller-hydraulic" | "none";

/** The tax of a place. */
export type Tax = {
  /** The rate in hundredths of a per cent: 1900 is 19 %. At most 10 000. */
  rate: number,
  /** Where it is rounded. */
  rounding: TaxRounding, };

/** Where tax is rounded to the minor unit. */
export type TaxRounding = "total" | "line";

/** An amount, the tax on it, and both together. */
export type TaxedSum = {
  /** Without tax. */
  net: Money,
  /** The tax. */
  tax: Money,
  /** With tax. */
  gross: Money, };

/** A thing that the trade calls by two names, by country: common practice. */
export type Term = "tappet" | "end-float" | "piston-pin";

/** A thing that the trade calls by two names, by country. */
export type TermEntry = {
  /** The thing. */
  id: Term,
  /** Its name in British workshops, lower case. */
  british: string,
  /** Its name in American workshops, lower case. */
  american: string,
  /** What this shop calls several of it, lower case. */
  plural: string, };

/** The shop’s choice of words. Each is chosen by itself: shops mix them. */
export type Terms = {
  /** Tappet or lifter. */
  tappet: Usage,
  /** End float or end play. */
  "end-float": Usage,
  /** Gudgeon pin or piston pin. */
  "piston-pin": Usage, };

/** What a test of pieces showed. */
export type TestResult = {
  /** How it was tested: "magnetic particles", "40 psi under water". */
  how: string,
  /** By whom; may be empty. */
  by: string,
  /** When, as the shop writes dates; may be empty. */
  date: string,
  /** The pieces that passed. */
  passed: Array<Part>,
  /** Those that failed. */
  failed: Array<Part>, };

/** A line of the job's sheet. */
export type TextField = "customer" | "contact" | "machine" | "engine-number" | "use" | "complaint" | "remarks";

/** A line of the sheet. */
export type TextFieldEntry = {
  /** The line. */
  id: TextField,
  /** Its name on the sheet. */
  label: string, };

/** How large the page's text is, in per cent of what the device asks for: from 100 to 200. */
export type TextSize = number;

/** What takes the end thrust of the crankshaft. */
export type ThrustBearing = "flange" | "washers";

/** What has been done about an item. */
export type Tick = {
  /** How many of it are done; 0 where nothing is, and where steps tell it. */
  done: number,
  /** When, as the shop writes dates; may be empty. */
  date: string,
  /** Of what was ordered: the number under which the supplier knows it; may be empty. */
  part_number?: string,
  /** A note: supplier, what is still missing; may be empty. */
  note: string,
  /** How far it is, step by step; none where steps were not told apart. */
  steps?: Array<StepTaken>,
  /** What a test showed. */
  result?: TestResult, };

/** Something to check or to put right before assembly. */
export type Todo = {
  /** The written form, such as `cut-filter`; with its cause's it names the line, whatever the words become. */
  id: string,
  /** In words, a sentence. */
  words: string,
  /** Why it is not needed after all, lower case: "the crankshaft is renewed"; empty where it is. */
  moot: string, };

/** A complaint and what was found of it. */
export type ToldAndFound = {
  /** What the customer noticed. */
  told: string,
  /** Whether what was found explains it, in a word or two, with a capital first letter. */
  answer: string,
  /** What was found, in a sentence; may be empty. */
  found: string, };

/** What a change is about. */
export type Topic = "take-in" | "findings" | "readings" | "sheet" | "decisions" | "lists" | "money" | "papers";

/** An undersize: the range to which journals are ground, and the wall of the shells that go with it. */
export type Undersize = {
  /** Of which journals. */
  journals: Journals,
  /** How much below standard: 0.010 in. */
  size: Entry,
  /** The smallest ground diameter; standard less the undersize if not given. */
  min?: Stated,
  /** The largest ground diameter; standard less the undersize if not given. */
  max?: Stated,
  /** The thinnest wall of a new shell; standard plus half the undersize if not given. */
  wall_min?: Stated,
  /** The thickest wall of a new shell; standard plus half the undersize if not given. */
  wall_max?: Stated,
  /** Shells for slight wear on a journal that is not ground (TM 5-4320-300-14: 0.002 in). */
  without_grinding?: boolean,
  /** The manual's page. */
  source: string, };

/** Findings that fit no cause of the catalogue. */
export type Unexplained = {
  /** In words: "pitting, grade 3, on thrust face, front side of main 3". */
  words: string,
  /** The parts it was seen on. */
  parts: Array<Part>,
  /** The probability that no cause of the catalogue made it, 0 to 1; the mean over the parts. */
  probability: number, };

/** Whose name for a thing is said. */
export type Usage = "british" | "american";

/** What instruments of a kind usually achieve. */
export type Usual = {
  /** The smallest step: "0.0001 in". */
  resolution: string,
  /** The expanded uncertainty: "0.0002 in". */
  uncertainty: string, };

/** What can be said of an engine. */
export type Verdict = "nothing-examined" | "too-early" | "sound-so-far" | "sound" | "ordinary-wear" | "none-stands-out" | "named" | "wreck";

/** How much waits for something. */
export type Waiting = {
  /** For what. */
  waits_for: WaitsFor,
  /** How many parts, lines or answers: at least 1. */
  count: number, };

/** What is waited for. The order is that in which a bench takes them up. */
export type WaitsFor = "layout" | "look" | "measure" | "proposal" | "customer" | "order" | "supplier" | "trip" | "machine-shop" | "bench";

/** How warm a part was when it was measured with an instrument at 20 °C. */
export type Warmth = {
  /** The part's temperature in whole degrees Celsius, −20 to 120. */
  celsius: number,
  /** What the part is made of. */
  material: Material, };

/** One way. */
export type Way = {
  /** The work, by which it is chosen. */
  work: Work,
  /** In words: "a new camshaft". */
  words: string,
  /** What it costs without tax; none where the shop has not priced all of it. */
  net: Money | null,
  /** Why it can't be gone, in a sentence; empty if it can. */
  ruled_out: string,
  /** What must be seen to first, in a sentence; may be empty. */
  mind: string, };

/** A way in by which a cause may have come. */
export type WayInView = {
  /** Its written form. */
  id: string,
  /** In words, lower case: "an air cleaner that leaks, is torn or missing". */
  words: string,
  /** How likely it was this way, if the cause is so; 0 to 1. */
  probability: number,
  /** Whether it is named with the cause. */
  named: boolean, };

/** A way in that was found, and what is put right about it. */
export type WayToClose = {
  /** The written form of the way in. */
  id: string,
  /** What is put right, a sentence. */
  todo: string,
  /** What shows it: "Air cleaner and duct: torn or leaking, grade 3". */
  found: Array<string>,
  /** On what it was found. */
  parts: Array<Part>, };

/** Ways that serve the same end. */
export type Ways = {
  /** The kind of part. */
  kind: PartKind,
  /** To what end. */
  what: string,
  /** The ways, the recommended first. */
  ways: Array<Way>,
  /** Why the first is recommended. */
  because: string,
  /** The way that the plan, the lists and the quote follow. */
  followed: Work,
  /** Whether the shop has not priced all that could be gone, so that they can't be compared. */
  unpriced: boolean,
  /** The person's reason, where they chose it. */
  chosen_because: string | null, };

/** Work that has a price. */
export type Work = "replace" | "machine" | "weld-up" | "sleeve" | "bush" | "polish" | "rebuild" | "clean" | "crack-test" | "hone" | "fit" | "weigh" | "balance" | "measure";

/** Work that has a price. */
export type WorkEntry = {
  /** The work. */
  id: Work,
  /** In words, lower case. */
  words: string, };

/** One list. */
export type WorkList = {
  /** Which. */
  kind: ListKind,
  /** Its title. */
  title: string,
  /** Why it is empty, where that is not because nothing is to be done; else empty. */
  note: string,
  /** Its items. */
  items: Array<ListItem>,
  /** How many items are wholly done. */
  done: number,
  /** What was ordered, sent or done and no longer follows from the job. */
  not_wanted: Array<NotWanted>, };

/** A worn bore. */
export type WornBore = {
  /** The bore. */
  part: Part,
  /** Its name. */
  label: string,
  /** Its diameter as found, in words; empty if it was not measured. */
  found_shown: string,
  /** What is wrong with it, in a sentence without its name. */
  fault: string, };

/** A field of a part's surface. Front, rear, left and right are those of the engine, seen from the rear looking to the
 * front. */
export type Zone = "front-left" | "front-crown" | "front-right" | "middle-left" | "middle-crown" | "middle-right" | "rear-left" | "rear-crown" | "rear-right" | "back" | "face-upper" | "face-lower" | "journal-front" | "journal-middle" | "journal-rear" | "fillet" | "oil-hole" | "nose" | "flanks" | "base-circle" | "lobe-front-edge" | "lobe-rear-edge" | "foot-centre" | "foot-ring" | "foot-edge" | "body" | "plunger" | "crown" | "ring-lands" | "thrust-skirt" | "opposite-skirt" | "pin-bosses" | "top-thrust" | "top-opposite" | "top-front" | "top-rear" | "middle-thrust" | "middle-opposite" | "middle-front" | "middle-rear" | "bottom-thrust" | "bottom-opposite" | "bottom-front" | "bottom-rear";

/** A field of a drawing. */
export type ZoneEntry = {
  /** The zone. */
  id: Zone,
  /** In words. */
  label: string,
  /** Where the fields form a table: the row, in words. */
  row: string | null,
  /** And the column. */
  column: string | null, };

/** Which drawing a part kind has. */
export type ZoneMap = "shell" | "thrust-face" | "journal" | "lobe" | "tappet" | "piston" | "bore" | "none";

/** Every action: what it takes and what it answers. */
export interface Actions {
  catalogue: { arguments: Record<symbol, never>; reply: Catalogue };
  job_list: { arguments: { 
/**
 * Words that must all stand in what was typed of the job, or in its engine; none finds every job.
 */
find?: string, 
/**
 * Whether those that are closed are listed too, not only counted.
 */
finished?: boolean, 
/**
 * How many open ones and how many finished ones at most; 12, if not said.
 */
most?: number, }; reply: JobList };
  job_create: { arguments: Record<symbol, never>; reply: JobView };
  job_demo: { arguments: { 
/**
 * A number by which to ask how far it is.
 */
way?: number, }; reply: Added };
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
  job_earlier: { arguments: { 
/**
 * The job.
 */
job: JobId, }; reply: Array<JobLine> };
  job_next_look: { arguments: { 
/**
 * The job.
 */
job: JobId, }; reply: NextLook | null };
  job_put_away: { arguments: { 
/**
 * The job.
 */
job: JobId, }; reply: Nothing };
  job_bring_back: { arguments: { 
/**
 * The job.
 */
job: JobId, }; reply: Nothing };
  job_away: { arguments: Record<symbol, never>; reply: Array<AwayLine> };
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
part?: Part, 
/**
 * Or what it shows that came with the engine: the edit that noted it.
 */
ancillary?: EditId, }; reply: JobView };
  photo_get: { arguments: { 
/**
 * The photo.
 */
photo: PhotoId, 
/**
 * How large.
 */
size: PhotoSize, }; reply: Blob };
  photo_take_in: { arguments: { 
/**
 * The shot.
 */
shot: ShotId, }; reply: JobView };
  shot_begin: { arguments: { 
/**
 * The job.
 */
job: JobId, 
/**
 * The part that the picture shows.
 */
part?: Part, 
/**
 * Or what it shows that came with the engine: the edit that noted it.
 */
ancillary?: EditId, }; reply: Shot };
  shot_list: { arguments: Record<symbol, never>; reply: Array<Shot> };
  shot_end: { arguments: { 
/**
 * The shot.
 */
shot: ShotId, }; reply: Array<Shot> };
  shot_drop: { arguments: { 
/**
 * The shot.
 */
shot: ShotId, }; reply: Array<Shot> };
  document_get: { arguments: { 
/**
 * The job.
 */
job: JobId, 
/**
 * The paper.
 */
document: Document, 
/**
 * Of a report: how much of it; the short one, if not said.
 */
extent?: Extent, 
/**
 * Of a list: which; the order, if not said.
 */
list?: ListKind, 
/**
 * Of labels: on what; sheets, if not said.
 */
stock?: LabelStock, 
/**
 * Of labels: of which pieces; of all, if not said.
 */
pieces?: Pieces, 
/**
 * Of labels on sheets: the first field that is free; that of a whole sheet, if not said.
 */
field?: SheetField, 
/**
 * What it is printed on; A4, if not said.
 */
paper?: PaperSize, 
/**
 * What for; to be mailed, if not said.
 */
purpose?: Purpose, 
/**
 * A number by which to ask how far it is.
 */
way?: number, }; reply: Blob };
  label_find: { arguments: { 
/**
 * The code, as it stands on the label or as a hand types it.
 */
text: string, }; reply: Labelled };
  label_read: { arguments: Record<symbol, never>; reply: Labelled };
  arrival_begin: { arguments: { 
/**
 * What it is called where it comes from.
 */
name: string, }; reply: ArrivalBegun };
  arrival_add: { arguments: { 
/**
 * The file.
 */
arrival: number, 
/**
 * How many bytes stand before it.
 */
at: number, }; reply: Nothing };
  arrival_list: { arguments: Record<symbol, never>; reply: Array<Arrival> };
  arrival_drop: { arguments: { 
/**
 * The file.
 */
arrival: number, }; reply: Nothing };
  archive_export: { arguments: { 
/**
 * The job.
 */
job: JobId, 
/**
 * A number by which to ask how far it is.
 */
way?: number, 
/**
 * Whether cleaned pictures stand in for the photos, which say neither where they were taken nor with which camera.
 */
give_away?: boolean, }; reply: Blob };
  archive_import: { arguments: { 
/**
 * The file.
 */
arrival: number, 
/**
 * A number by which to ask how far it is.
 */
way?: number, 
/**
 * Whether a job that was put away here is to come back.
 */
back?: boolean, }; reply: Imported };
  archive_kept: { arguments: { 
/**
 * The job.
 */
job: JobId, }; reply: Kept };
  shop_export: { arguments: { 
/**
 * A number by which to ask how far it is.
 */
way?: number, }; reply: Blob };
  backup_get: { arguments: Record<symbol, never>; reply: Backup };
  backup_make: { arguments: { 
/**
 * A number by which to ask how far it is.
 */
way?: number, }; reply: BackedUp };
  backup_forget: { arguments: Record<symbol, never>; reply: Nothing };
  way_get: { arguments: { 
/**
 * The number with which it was begun.
 */
way: number, }; reply: Steps | null };
  way_stop: { arguments: { 
/**
 * The number with which it was begun.
 */
way: number, }; reply: null };
  shelf_get: { arguments: Record<symbol, never>; reply: Shelf };
  instrument_keep: { arguments: { 
/**
 * The instrument.
 */
instrument: Instrument, }; reply: Shelf };
  instrument_drop: { arguments: { 
/**
 * The instrument.
 */
id: InstrumentId, }; reply: Shelf };
  sheet_keep: { arguments: { 
/**
 * The sheet.
 */
sheet: Sheet, }; reply: Shelf };
  sheet_drop: { arguments: { 
/**
 * The sheet's name.
 */
name: string, }; reply: Shelf };
  sheet_export: { arguments: { 
/**
 * The sheet's name.
 */
name: string, }; reply: Blob };
  sheet_import: { arguments: Record<symbol, never>; reply: Shelf };
  prices_keep: { arguments: { 
/**
 * The prices.
 */
prices: PriceList, }; reply: Shelf };
  prices_learnt: { arguments: Record<symbol, never>; reply: Array<LearntPrice> };
  settings_get: { arguments: Record<symbol, never>; reply: Settings };
  settings_set: { arguments: { 
/**
 * What they are to be; what is missing becomes empty.
 */
settings: Settings, }; reply: Settings };
}
