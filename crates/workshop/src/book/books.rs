//! Every book, its fields, and the record that each line is read into. To add a field, add one line here.

use coatings::can::Level;
use coatings::mix::{ChalkRecipe, Sheen, Thinner};
use coatings::{CanSize, Substrate, Tool};
use geometry::Kind;
use units::{Area, Day, Density, Length, Mass, Volume};

use super::field::{BookField, FieldKind};
use super::quantity::Quantity;
use super::record::{Celsius, Record, Share, WorkTime, WorkingHours, answers, records};
use crate::document::Colour;

/// The id of the line in a book that has only one line.
pub(crate) const ONLY: &str = "only";

/// The habits about money, which affect whether a piece pays off.
pub const OF_MONEY: [&str; 6] = ["hourly", "profit", "fee-share", "fee", "wear", "delivery"];
/// The habits for the working hours of each day, starting on Monday.
pub const WEEK: [&str; 7] = ["mon", "tue", "wed", "thu", "fri", "sat", "sun"];
/// The habits for the air in the workshop.
pub const AIR: [&str; 3] = ["temperature", "surface", "humidity"];

/// A book.
#[derive(Debug, PartialEq, Eq)]
pub struct Book {
    /// The book's key in saved files.
    pub key: &'static str,
    /// True if each piece has its own copy of the book. False if the workshop has a single one.
    pub of_piece: bool,
    /// True if the book has only one line.
    pub is_single: bool,
    /// The book's fields.
    pub fields: &'static [BookField],
}

impl Book {
    /// Returns the field with this key.
    pub fn field(&self, key: &str) -> Option<&'static BookField> {
        self.fields.iter().find(|field| field.key == key)
    }
}

/// Returns the book with this key.
pub fn book(key: &str) -> Option<&'static Book> {
    BOOKS.iter().find(|book| book.key == key)
}

answers! {
    /// Whether a price was asked or paid.
    Side {
        Asked = "asked", "asked";
        Sold = "sold", "sold for";
    }

    /// The material of the art on a piece.
    ArtKind {
        Leaf = "leaf", "metal leaf";
        Stencil = "stencil", "stencil";
        Transfer = "transfer", "transfer";
        Paper = "paper", "glued paper";
        Cast = "cast", "Cast ornament";
    }

    /// A kind of supply other than cans.
    SupplyKind {
        Sheets = "sheets", "abrasive sheets";
        Leaf = "leaf", "metal leaf";
        Additive = "additive", "additive";
        Decor = "decor", "decor";
    }

    /// The age of the old finish.
    FinishAge {
        Unknown = "unknown", "I do not know";
        Before1978 = "before-1978", "before 1978";
        Later = "later", "1978 or later";
    }

    /// The result of a lead test on the old finish.
    LeadTest {
        NotDone = "none", "not done";
        Negative = "negative", "no lead found";
        Positive = "positive", "lead found";
    }

    /// How far a piece is.
    Status {
        Looking = "looking", "Looking";
        Bought = "bought", "Bought";
        Working = "working", "Working on it";
        ForSale = "for-sale", "For sale";
        Sold = "sold", "Sold";
    }

    /// When a log entry was made, relative to the work.
    LogTime {
        Before = "before", "before";
        During = "during", "during the work";
        After = "after", "after";
    }
}

use FieldKind::{
    Can, Choice, Colour as Color, Count, Day as OnDay, Furniture, Hours, Material, Money, Of, Picture, Scale,
    Substrate as Onto, Text, Tick, Tool as WithTool, Words,
};

records! {
    /// Local prices for furniture.
    PriceNote = "prices" (of_piece: false, is_single: false) {
        furniture: Option<Kind> = "furniture", "Kind", Furniture;
        style: String = "style", "Style", Text;
        price: Option<u64> = "price", "Price", Money;
        side: Option<Side> = "is", "That was", Choice(Side::ANSWERS);
        day: Option<Day> = "day", "Seen on", OnDay;
        gone: Option<u32> = "gone", "Gone after days", Count(3650);
        listed: bool = "listed", "Still listed", Tick;
    }
    /// Cans in the workshop.
    ShelfCan = "shelf" (of_piece: false, is_single: false) {
        material: String = "material", "Material", Material;
        colour: Option<Colour> = "colour", "Colour", Color;
        piece: String = "of", "Piece it is for, by its id in the file", Text;
        can: Option<&'static CanSize> = "can", "Size of the can", Can;
        level: Option<&'static Level> = "level", "How full it is", Choice(&[("nearly-full", "nearly full"), ("three-quarters", "about three quarters"), ("half", "about half"), ("quarter", "about a quarter"), ("nearly-empty", "nearly empty")]);
        weight: Option<Mass> = "weight", "Weighs now", Scale;
        tare: Option<Mass> = "tare", "Empty can weighs", Scale;
        density: Option<Density> = "density", "Density on its label", Of(Quantity::Density);
        opened: Option<Day> = "opened", "Opened on", OnDay;
        frozen: bool = "frozen", "It has frozen", Tick;
        note: String = "note", "Note", Text;
    }
    /// Supplies in the workshop other than cans.
    Supply = "stores" (of_piece: false, is_single: false) {
        kind: Option<SupplyKind> = "kind", "What", Choice(SupplyKind::ANSWERS);
        grit: String = "grit", "Grit", Choice(&[("P80", "P80"), ("P100", "P100"), ("P120", "P120"), ("P180", "P180"), ("P220", "P220"), ("P320", "P320"), ("P400", "P400")]);
        name: String = "name", "Name", Text;
        count: Option<u32> = "count", "How many there are", Count(10_000);
        note: String = "note", "Note", Text;
    }
    /// Items already in the basket, by material and color.
    InBasket = "basket" (of_piece: false, is_single: false) {
        day: Option<Day> = "day", "On", OnDay;
    }
    /// Can prices for materials that have no label of the maker's own. `prices::line` builds the line's id.
    CanPrice = "cans" (of_piece: false, is_single: false) {
        material: String = "material", "Material", Material;
        can: Option<&'static CanSize> = "can", "Can", Can;
        price: Option<u64> = "price", "Price", Money;
    }
    /// Mixing recipes, by weight.
    MixRecipe = "recipes" (of_piece: false, is_single: false) {
        name: String = "name", "Name", Text;
        colour: Option<Colour> = "colour", "Colour when dry", Color;
        photo: bool = "photo", "Photo", Picture;
        part_1: String = "part-1", "Part 1", Text;
        weight_1: Option<Mass> = "weight-1", "Weight of part 1", Scale;
        colour_1: Option<Colour> = "colour-1", "Colour of part 1, dry", Color;
        part_2: String = "part-2", "Part 2", Text;
        weight_2: Option<Mass> = "weight-2", "Weight of part 2", Scale;
        colour_2: Option<Colour> = "colour-2", "Colour of part 2, dry", Color;
        part_3: String = "part-3", "Part 3", Text;
        weight_3: Option<Mass> = "weight-3", "Weight of part 3", Scale;
        colour_3: Option<Colour> = "colour-3", "Colour of part 3, dry", Color;
        part_4: String = "part-4", "Part 4", Text;
        weight_4: Option<Mass> = "weight-4", "Weight of part 4", Scale;
        colour_4: Option<Colour> = "colour-4", "Colour of part 4, dry", Color;
        part_5: String = "part-5", "Part 5", Text;
        weight_5: Option<Mass> = "weight-5", "Weight of part 5", Scale;
        colour_5: Option<Colour> = "colour-5", "Colour of part 5, dry", Color;
        part_6: String = "part-6", "Part 6", Text;
        weight_6: Option<Mass> = "weight-6", "Weight of part 6", Scale;
        colour_6: Option<Colour> = "colour-6", "Colour of part 6, dry", Color;
        wanted: Option<Mass> = "wanted", "Batch wanted", Scale;
        rest: Option<Mass> = "rest", "Left in the jar", Scale;
        note: String = "note", "Note", Words;
    }
    /// Chalk-type paint, by weight.
    ChalkLine = "chalk" (of_piece: false, is_single: false) {
        name: String = "name", "Name", Text;
        paint: Option<Mass> = "paint", "Paint by weight instead", Scale;
        volume: Option<Volume> = "volume", "Paint by volume", Of(Quantity::Volume);
        recipe: Option<&'static ChalkRecipe> = "recipe", "How much powder", Choice(&[("chalk-eighth", "1/2 cup and 1/4 cup water to a quart"), ("chalk-quarter", "4 tbsp and 2 tbsp water to a cup"), ("chalk-third", "1/3 cup and 2 to 3 tbsp water to a cup"), ("chalk-half", "one part to two of paint")]);
        powder: Option<Mass> = "powder", "Powder of your own", Scale;
        water: Option<Mass> = "water", "Water of your own", Scale;
        wanted: Option<Volume> = "wanted", "Batch wanted", Of(Quantity::Volume);
        sheen: Option<&'static Sheen> = "sheen", "Sheen of the paint", Choice(&[("gloss", "gloss"), ("semi-gloss", "semi-gloss"), ("satin", "satin"), ("eggshell", "eggshell"), ("flat", "flat")]);
        material: String = "material", "Kind of paint", Material;
        density: Option<Density> = "density", "Density on its label", Of(Quantity::Density);
        solids: Option<Share> = "solids", "Volume solids on its label", Of(Quantity::Share);
        cup: Option<Mass> = "cup", "A US cup (237 mL) of powder weighs", Scale;
        note: String = "note", "Note", Words;
    }
    /// Paint thinned for the sprayer.
    ThinLine = "thinning" (of_piece: false, is_single: false) {
        material: String = "material", "Material", Material;
        paint: Option<Volume> = "paint", "Paint", Of(Quantity::Volume);
        share: Option<Share> = "share", "Thinner, of that", Of(Quantity::Share);
        most: Option<Share> = "most", "Its label allows", Of(Quantity::Share);
        solids: Option<Share> = "solids", "Volume solids on its label", Of(Quantity::Share);
        thinner: Option<&'static Thinner> = "thinner", "Thinned with", Choice(&[("water", "water"), ("mineral-spirits", "mineral spirits"), ("alcohol", "denatured alcohol")]);
        coats: Option<u32> = "coats", "Coats without thinner", Count(20);
    }
    /// Mixed batches. Each refers to its recipe.
    MixedBatch = "batches" (of_piece: false, is_single: false) {
        recipe: String = "recipe", "Recipe", Text;
        day: Option<Day> = "day", "Mixed on", OnDay;
        made: Option<Mass> = "made", "Made", Scale;
        left: Option<Mass> = "left", "Left", Scale;
    }
    /// Cans weighed before and after a job. Each refers to its piece.
    Weighing = "weighings" (of_piece: false, is_single: false) {
        day: Option<Day> = "day", "Day", OnDay;
        piece_id: String = "of", "Name of the piece in the file", Text;
        piece: String = "piece", "Piece", Text;
        material: String = "material", "Material", Material;
        tool: Option<&'static Tool> = "tool", "Tool", WithTool;
        coats: Option<u32> = "coats", "Coats", Count(20);
        ground: Option<Substrate> = "ground", "What its first coat went onto (primed counts as sound)", Onto;
        area: Option<Area> = "area", "Area that it coated", Of(Quantity::Area);
        share: Option<Share> = "share", "Give or take", Of(Quantity::Share);
        before: Option<Mass> = "before", "Can before the job", Scale;
        after: Option<Mass> = "after", "Can after the job", Scale;
        sure: bool = "sure", "It is right all the same", Tick;
    }
    /// Settings that the maker enters once.
    Habits = "habits" (of_piece: false, is_single: true) {
        hourly: Option<u64> = "hourly", "Wanted for an hour", Money;
        profit: Option<u64> = "profit", "Profit wanted besides", Money;
        fee_share: Option<Share> = "fee-share", "Fee of the marketplace", Of(Quantity::Share);
        fee: Option<u64> = "fee", "Fee for each sale", Money;
        wear: Option<u64> = "wear", "Wear of tools for a piece", Money;
        delivery: Option<u64> = "delivery", "Delivery of a piece", Money;
        mon: Option<WorkingHours> = "mon", "Monday", Hours;
        tue: Option<WorkingHours> = "tue", "Tuesday", Hours;
        wed: Option<WorkingHours> = "wed", "Wednesday", Hours;
        thu: Option<WorkingHours> = "thu", "Thursday", Hours;
        fri: Option<WorkingHours> = "fri", "Friday", Hours;
        sat: Option<WorkingHours> = "sat", "Saturday", Hours;
        sun: Option<WorkingHours> = "sun", "Sunday", Hours;
        temperature: Option<Celsius> = "temperature", "Air of the workshop", Of(Quantity::Temperature);
        surface: Option<Celsius> = "surface", "Surface of the piece", Of(Quantity::Temperature);
        humidity: Option<Share> = "humidity", "Humidity of the air", Of(Quantity::Share);
        scale_step: Option<Mass> = "scale-step", "Smallest step of the scale", Scale;
        sheet_yield: Option<Area> = "sheet-yield", "A sheet of abrasive lasts for", Of(Quantity::Area);
        sheet_price: Option<u64> = "sheet-price", "A sheet of abrasive costs", Money;
        sprayer: bool = "sprayer", "There is a sprayer in the workshop", Tick;
        reserve: Option<Share> = "reserve", "Paint kept for touch-ups", Of(Quantity::Share);
        dilution: Option<u32> = "dilution", "Parts of water to one of cleaner", Count(200);
    }
    /// Facts about a piece other than its measurements.
    Facts = "facts" (of_piece: true, is_single: true) {
        status: Option<Status> = "status", "Status", Choice(Status::ANSWERS);
        bought: Option<u64> = "bought", "Paid for it, or asked", Money;
        asking: Option<u64> = "asking", "What you would ask for it", Money;
        sold: Option<u64> = "sold", "Sold for", Money;
        sold_on: Option<Day> = "sold-on", "Sold on", OnDay;
        old_color: Option<Colour> = "old-color", "Color of the old paint", Color;
        begin: Option<Day> = "begin", "Work begins on", OnDay;
        due: Option<Day> = "due", "To be ready on", OnDay;
        hours: Option<WorkTime> = "hours", "Hours of work", Of(Quantity::Time);
        materials: Option<u64> = "materials", "Materials for it, all", Money;
        delivery: Option<u64> = "delivery", "Delivery of this piece", Money;
        age: Option<FinishAge> = "age", "The old finish is from", Choice(FinishAge::ANSWERS);
        lead: Option<LeadTest> = "lead", "Lead test of the old finish", Choice(LeadTest::ANSWERS);
        stickers: bool = "stickers", "Stickers or their glue", Tick;
        loose: bool = "loose", "Old finish comes off in places", Tick;
        loose_joints: bool = "loose-joints", "Loose joints", Tick;
        rust: bool = "rust", "Rusty hardware", Tick;
        hardware: Option<u32> = "hardware", "Knobs, pulls, hinges", Count(500);
        holes: Option<u32> = "holes", "Holes to fill", Count(500);
        hole_width: Option<Length> = "hole-width", "Width of a hole", Of(Quantity::Length);
        hole_depth: Option<Length> = "hole-depth", "Depth of a hole", Of(Quantity::Length);
        dents: Option<u32> = "dents", "Dents to fill", Count(500);
        dent_width: Option<Length> = "dent-width", "Width of a dent", Of(Quantity::Length);
        dent_depth: Option<Length> = "dent-depth", "Depth of a dent", Of(Quantity::Length);
    }
    /// Leaf, stencils, transfers, paper and cast ornaments on a piece.
    ArtLine = "art" (of_piece: true, is_single: false) {
        kind: Option<ArtKind> = "kind", "What", Choice(ArtKind::ANSWERS);
        place: String = "place", "Where", Text;
        width: Option<Length> = "width", "Width of it", Of(Quantity::Length);
        height: Option<Length> = "height", "Height of it", Of(Quantity::Length);
        count: Option<u32> = "count", "How many", Count(500);
        cover: Option<Share> = "cover", "Covered of that", Of(Quantity::Share);
        sheet_width: Option<Length> = "sheet-width", "One sheet, width", Of(Quantity::Length);
        sheet_height: Option<Length> = "sheet-height", "One sheet, height", Of(Quantity::Length);
        volume: Option<Volume> = "volume", "One mold holds", Of(Quantity::Volume);
        price: Option<u64> = "price", "Price of one sheet", Money;
        hours: Option<WorkTime> = "hours", "Time for it", Of(Quantity::Time);
    }
    /// The log of a piece.
    LogLine = "log" (of_piece: true, is_single: false) {
        day: Option<Day> = "day", "Day", OnDay;
        when: Option<LogTime> = "when", "When", Choice(LogTime::ANSWERS);
        photo: bool = "photo", "Photo", Picture;
        note: String = "note", "Note", Words;
    }
    /// Finished steps. The line's id is the key of the step.
    DoneStep = "done" (of_piece: true, is_single: false) {
        day: Option<Day> = "day", "Done on", OnDay;
    }
}

/// Returns the label of a field, given its key in saved files.
pub(crate) fn label<R: Record>(key: &'static str) -> &'static str {
    let field = book(R::BOOK).and_then(|book| book.field(key));
    field.map_or(key, |field| field.label)
}

impl MixRecipe {
    /// Returns the name, weight and dry color of each part. Unused parts are empty.
    pub fn parts(&self) -> [(&str, Option<Mass>, Option<Colour>); 6] {
        [
            (self.part_1.as_str(), self.weight_1, self.colour_1),
            (self.part_2.as_str(), self.weight_2, self.colour_2),
            (self.part_3.as_str(), self.weight_3, self.colour_3),
            (self.part_4.as_str(), self.weight_4, self.colour_4),
            (self.part_5.as_str(), self.weight_5, self.colour_5),
            (self.part_6.as_str(), self.weight_6, self.colour_6),
        ]
    }
}

impl Habits {
    /// Returns the hours of each day of the week, starting on Monday.
    pub fn week(self) -> [Option<WorkingHours>; 7] {
        [
            self.mon, self.tue, self.wed, self.thu, self.fri, self.sat, self.sun,
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The answers are copied here because the tables in `coatings` are not constants. Every key must exist
    /// there.
    #[test]
    fn recipes_sheens_and_thinners_are_those_of_the_trade() {
        let keys = |of: &str, field: &str| match book(of).unwrap().field(field).unwrap().kind {
            FieldKind::Choice(answers) => answers.iter().map(|(key, _)| *key).collect::<Vec<_>>(),
            _ => panic!("{of} {field}"),
        };
        use coatings::mix::{CHALK_RECIPES, SHEENS, THINNERS};
        assert!(
            CHALK_RECIPES
                .iter()
                .map(|recipe| recipe.key)
                .eq(keys("chalk", "recipe"))
        );
        assert!(
            coatings::can::LEVELS
                .iter()
                .map(|level| level.key)
                .eq(keys("shelf", "level"))
        );
        assert!(SHEENS.iter().map(|sheen| sheen.key).eq(keys("chalk", "sheen")));
        assert!(
            THINNERS
                .iter()
                .map(|thinner| thinner.key)
                .eq(keys("thinning", "thinner"))
        );
    }

    #[test]
    fn no_name_is_given_twice() {
        for (place, book) in BOOKS.iter().enumerate() {
            assert!(
                BOOKS[..place].iter().all(|other| other.key != book.key),
                "{}",
                book.key
            );
            for (place, field) in book.fields.iter().enumerate() {
                let before = &book.fields[..place];
                assert!(
                    before.iter().all(|other| other.key != field.key),
                    "{} {}",
                    book.key,
                    field.key
                );
                assert!(!field.label.is_empty());
            }
        }
    }
}
