//! Every book, its fields, and the record that each line is read into. To add a field, add one line here.

use coatings::can::Level;
use coatings::mix::{ChalkRecipe, Sheen, Thinner};
use coatings::{CanSize, Substrate, Tool};
use geometry::Kind;
use units::{Area, Day, Density, Length, Mass, Volume};

use super::field::{Bare, BookField, FieldKind};
use super::quantity::Quantity;
use super::record::{Amount, Celsius, Record, Share, WorkTime, WorkingHours, answers, records};
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
        Paper = "paper", "decoupage paper";
        Cast = "cast", "cast ornament";
    }

    /// A kind of supply other than cans.
    SupplyKind {
        Sheets = "sheets", "sandpaper sheets";
        Leaf = "leaf", "metal leaf";
        Additive = "additive", "additive";
        Decor = "decor", "decor";
    }

    /// The age of the old finish.
    FinishAge {
        Unknown = "unknown", "I don't know";
        Before1978 = "before-1978", "Before 1978";
        Later = "later", "1978 or later";
    }

    /// The result of a lead test on the old finish.
    LeadTest {
        NotDone = "none", "Not done";
        Negative = "negative", "No lead found";
        Positive = "positive", "Lead found";
    }

    /// How far a piece is.
    Status {
        Looking = "looking", "Not bought yet";
        Bought = "bought", "Bought";
        Working = "working", "Working on it";
        ForSale = "for-sale", "For sale";
        Sold = "sold", "Sold";
    }

    /// What the parts of a mixing recipe are of, if not of its weight.
    PartsBy {
        Volume = "volume", "volume";
    }

    /// When a log entry was made, relative to the work.
    LogTime {
        Before = "before", "before";
        During = "during", "during the work";
        After = "after", "after";
    }
}

use FieldKind::{
    Amount as OfPaint, Can, Choice, Colour as Color, Count, Day as OnDay, Furniture, Hours, Material, Money,
    Of, Picture, Scale, Substrate as Onto, Text, Tick, Tool as WithTool, Words,
};

records! {
    /// Local prices for furniture.
    PriceNote = "prices" (of_piece: false, is_single: false) {
        furniture: Option<Kind> = "furniture", "Kind", Furniture;
        style: String = "style", "Style", Text;
        price: Option<u64> = "price", "Price", Money;
        side: Option<Side> = "is", "Price was", Choice(Side::ANSWERS);
        day: Option<Day> = "day", "Date seen", OnDay;
        gone: Option<u32> = "gone", "Days until it sold", Count(3650);
        listed: bool = "listed", "Still listed", Tick;
    }
    /// Cans in the workshop.
    ShelfCan = "shelf" (of_piece: false, is_single: false) {
        material: String = "material", "Material", Material;
        colour: Option<Colour> = "colour", "Color", Color;
        piece: String = "of", "Piece ID", Text;
        can: Option<&'static CanSize> = "can", "Can size", Can;
        level: Option<&'static Level> = "level", "Fill level", Choice(&[("nearly-full", "nearly full"), ("three-quarters", "about three quarters"), ("half", "about half"), ("quarter", "about a quarter"), ("nearly-empty", "nearly empty")]);
        weight: Option<Mass> = "weight", "Weight now", Scale;
        tare: Option<Mass> = "tare", "Empty can weight", Scale;
        density: Option<Density> = "density", "Label density", Of(Quantity::Density);
        opened: Option<Day> = "opened", "Date opened", OnDay;
        frozen: bool = "frozen", "Has been frozen", Tick;
        note: String = "note", "Note", Text;
    }
    /// Supplies in the workshop other than cans.
    Supply = "stores" (of_piece: false, is_single: false) {
        kind: Option<SupplyKind> = "kind", "Type", Choice(SupplyKind::ANSWERS);
        grit: String = "grit", "Grit", Choice(&[("P80", "80"), ("P100", "100"), ("P120", "120"), ("P180", "180"), ("P220", "220"), ("P320", "320"), ("P400", "400")]);
        name: String = "name", "Name", Text;
        count: Option<u32> = "count", "Quantity", Count(10_000);
        note: String = "note", "Note", Text;
    }
    /// Items already bought on this trip, by material and color.
    InBasket = "basket" (of_piece: false, is_single: false) {
        day: Option<Day> = "day", "Date", OnDay;
    }
    /// Can prices for materials that have no label of the maker's own. `prices::line` builds the line's id.
    CanPrice = "cans" (of_piece: false, is_single: false) {
        material: String = "material", "Material", Material;
        can: Option<&'static CanSize> = "can", "Can", Can;
        price: Option<u64> = "price", "Price", Money;
    }
    /// Mixing recipes, by weight or by parts.
    MixRecipe = "recipes" (of_piece: false, is_single: false) {
        name: String = "name", "Name", Text;
        colour: Option<Colour> = "colour", "Dry color", Color;
        photo: bool = "photo", "Photo", Picture;
        part_1: String = "part-1", "Can 1", Text;
        weight_1: Option<Amount> = "weight-1", "How much of can 1", OfPaint(Bare::Parts);
        colour_1: Option<Colour> = "colour-1", "Can 1 dry color", Color;
        material_1: String = "material-1", "Can 1 material", Material;
        density_1: Option<Density> = "density-1", "Can 1 density", Of(Quantity::Density);
        part_2: String = "part-2", "Can 2", Text;
        weight_2: Option<Amount> = "weight-2", "How much of can 2", OfPaint(Bare::Parts);
        colour_2: Option<Colour> = "colour-2", "Can 2 dry color", Color;
        material_2: String = "material-2", "Can 2 material", Material;
        density_2: Option<Density> = "density-2", "Can 2 density", Of(Quantity::Density);
        part_3: String = "part-3", "Can 3", Text;
        weight_3: Option<Amount> = "weight-3", "How much of can 3", OfPaint(Bare::Parts);
        colour_3: Option<Colour> = "colour-3", "Can 3 dry color", Color;
        material_3: String = "material-3", "Can 3 material", Material;
        density_3: Option<Density> = "density-3", "Can 3 density", Of(Quantity::Density);
        part_4: String = "part-4", "Can 4", Text;
        weight_4: Option<Amount> = "weight-4", "How much of can 4", OfPaint(Bare::Parts);
        colour_4: Option<Colour> = "colour-4", "Can 4 dry color", Color;
        material_4: String = "material-4", "Can 4 material", Material;
        density_4: Option<Density> = "density-4", "Can 4 density", Of(Quantity::Density);
        part_5: String = "part-5", "Can 5", Text;
        weight_5: Option<Amount> = "weight-5", "How much of can 5", OfPaint(Bare::Parts);
        colour_5: Option<Colour> = "colour-5", "Can 5 dry color", Color;
        material_5: String = "material-5", "Can 5 material", Material;
        density_5: Option<Density> = "density-5", "Can 5 density", Of(Quantity::Density);
        part_6: String = "part-6", "Can 6", Text;
        weight_6: Option<Amount> = "weight-6", "How much of can 6", OfPaint(Bare::Parts);
        colour_6: Option<Colour> = "colour-6", "Can 6 dry color", Color;
        material_6: String = "material-6", "Can 6 material", Material;
        density_6: Option<Density> = "density-6", "Can 6 density", Of(Quantity::Density);
        by: Option<PartsBy> = "by", "Parts by", Choice(PartsBy::ANSWERS);
        wanted: Option<Amount> = "wanted", "Batch size", OfPaint(Bare::Usual);
        rest: Option<Amount> = "rest", "Left over in the jar", OfPaint(Bare::Grams);
        over: Option<u32> = "over", "Which can was off", Choice(&[("1", "can 1"), ("2", "can 2"), ("3", "can 3"), ("4", "can 4"), ("5", "can 5"), ("6", "can 6")]);
        poured: Option<Amount> = "poured", "How much is really in", OfPaint(Bare::Grams);
        note: String = "note", "Note", Words;
    }
    /// Chalk-type paint, by weight.
    ChalkLine = "chalk" (of_piece: false, is_single: false) {
        name: String = "name", "Name", Text;
        paint: Option<Mass> = "paint", "Paint weight", Scale;
        volume: Option<Volume> = "volume", "Paint volume", Of(Quantity::Volume);
        recipe: Option<&'static ChalkRecipe> = "recipe", "Powder recipe", Choice(&[("chalk-eighth", "1/2 cup powder, 1/4 cup water per quart"), ("chalk-quarter", "4 tbsp powder, 2 tbsp water per cup"), ("chalk-third", "1/3 cup powder, 2 to 3 tbsp water per cup"), ("chalk-half", "1 part powder to 2 parts paint")]);
        powder: Option<Mass> = "powder", "Your powder weight", Scale;
        water: Option<Mass> = "water", "Your water weight", Scale;
        wanted: Option<Volume> = "wanted", "Batch size", Of(Quantity::Volume);
        sheen: Option<&'static Sheen> = "sheen", "Paint sheen", Choice(&[("gloss", "gloss"), ("semi-gloss", "semi-gloss"), ("satin", "satin"), ("eggshell", "eggshell"), ("flat", "flat")]);
        material: String = "material", "Kind of paint", Material;
        density: Option<Density> = "density", "Label density", Of(Quantity::Density);
        solids: Option<Share> = "solids", "Label volume solids", Of(Quantity::Share);
        cup: Option<Mass> = "cup", "Weight of a US cup (237 mL) of powder", Scale;
        note: String = "note", "Note", Words;
    }
    /// Paint thinned for the sprayer.
    ThinLine = "thinning" (of_piece: false, is_single: false) {
        material: String = "material", "Material", Material;
        paint: Option<Volume> = "paint", "Paint amount", Of(Quantity::Volume);
        share: Option<Share> = "share", "Thinner share", Of(Quantity::Share);
        most: Option<Share> = "most", "Label maximum", Of(Quantity::Share);
        solids: Option<Share> = "solids", "Label volume solids", Of(Quantity::Share);
        thinner: Option<&'static Thinner> = "thinner", "Thinner", Choice(&[("water", "water"), ("mineral-spirits", "mineral spirits"), ("alcohol", "denatured alcohol")]);
        coats: Option<u32> = "coats", "Coats, unthinned", Count(20);
    }
    /// Mixed batches. Each refers to its recipe.
    MixedBatch = "batches" (of_piece: false, is_single: false) {
        recipe: String = "recipe", "Recipe", Text;
        day: Option<Day> = "day", "Date mixed", OnDay;
        made: Option<Mass> = "made", "Amount made", Scale;
        left: Option<Mass> = "left", "Left over in the jar", Scale;
    }
    /// Cans weighed before and after a job. Each refers to its piece.
    Weighing = "weighings" (of_piece: false, is_single: false) {
        day: Option<Day> = "day", "Date", OnDay;
        piece_id: String = "of", "Piece ID", Text;
        piece: String = "piece", "Piece", Text;
        material: String = "material", "Material", Material;
        tool: Option<&'static Tool> = "tool", "Tool", WithTool;
        coats: Option<u32> = "coats", "Coats", Count(20);
        ground: Option<Substrate> = "ground", "Surface under the first coat (primed counts as sound)", Onto;
        area: Option<Area> = "area", "Area coated", Of(Quantity::Area);
        share: Option<Share> = "share", "Area uncertainty", Of(Quantity::Share);
        before: Option<Mass> = "before", "Can weight before", Scale;
        after: Option<Mass> = "after", "Can weight after", Scale;
        sure: bool = "sure", "Numbers are correct", Tick;
    }
    /// Settings that the maker enters once.
    Habits = "habits" (of_piece: false, is_single: true) {
        hourly: Option<u64> = "hourly", "Hourly rate", Money;
        profit: Option<u64> = "profit", "Extra profit", Money;
        fee_share: Option<Share> = "fee-share", "Marketplace fee", Of(Quantity::Share);
        fee: Option<u64> = "fee", "Fee per sale", Money;
        wear: Option<u64> = "wear", "Tool wear per piece", Money;
        delivery: Option<u64> = "delivery", "Delivery per piece", Money;
        mon: Option<WorkingHours> = "mon", "Monday", Hours;
        tue: Option<WorkingHours> = "tue", "Tuesday", Hours;
        wed: Option<WorkingHours> = "wed", "Wednesday", Hours;
        thu: Option<WorkingHours> = "thu", "Thursday", Hours;
        fri: Option<WorkingHours> = "fri", "Friday", Hours;
        sat: Option<WorkingHours> = "sat", "Saturday", Hours;
        sun: Option<WorkingHours> = "sun", "Sunday", Hours;
        begin: Option<Day> = "begin", "Start date", OnDay;
        temperature: Option<Celsius> = "temperature", "Shop air temperature", Of(Quantity::Temperature);
        surface: Option<Celsius> = "surface", "Surface temperature", Of(Quantity::Temperature);
        humidity: Option<Share> = "humidity", "Air humidity", Of(Quantity::Share);
        scale_step: Option<Mass> = "scale-step", "Smallest step on your scale", Scale;
        sheet_yield: Option<Area> = "sheet-yield", "Area per sandpaper sheet", Of(Quantity::Area);
        sheet_price: Option<u64> = "sheet-price", "Price per sandpaper sheet", Money;
        sprayer: bool = "sprayer", "I have a sprayer", Tick;
        reserve: Option<Share> = "reserve", "Paint kept for touch-ups", Of(Quantity::Share);
        dilution: Option<u32> = "dilution", "Parts water per part cleaner", Count(200);
    }
    /// Facts about a piece other than its measurements.
    Facts = "facts" (of_piece: true, is_single: true) {
        status: Option<Status> = "status", "Status", Choice(Status::ANSWERS);
        bought: Option<u64> = "bought", "Seller\u{2019}s price, or what you paid", Money;
        asking: Option<u64> = "asking", "You\u{2019}ll sell it for", Money;
        sold: Option<u64> = "sold", "Sale price", Money;
        sold_on: Option<Day> = "sold-on", "Date sold", OnDay;
        old_color: Option<Colour> = "old-color", "Color of the old paint", Color;
        begin: Option<Day> = "begin", "Start date", OnDay;
        due: Option<Day> = "due", "Due date", OnDay;
        hours: Option<WorkTime> = "hours", "Hours worked", Of(Quantity::Time);
        materials: Option<u64> = "materials", "Total material cost", Money;
        delivery: Option<u64> = "delivery", "Delivery for this piece", Money;
        age: Option<FinishAge> = "age", "Age of old finish", Choice(FinishAge::ANSWERS);
        lead: Option<LeadTest> = "lead", "Lead test result", Choice(LeadTest::ANSWERS);
        stickers: bool = "stickers", "Stickers or sticker glue", Tick;
        loose: bool = "loose", "Flaking or peeling finish", Tick;
        loose_joints: bool = "loose-joints", "Loose joints", Tick;
        rust: bool = "rust", "Rusty hardware", Tick;
        hardware: Option<u32> = "hardware", "Knobs, pulls, hinges", Count(500);
        holes: Option<u32> = "holes", "Holes to fill", Count(500);
        hole_width: Option<Length> = "hole-width", "Hole width", Of(Quantity::Length);
        hole_depth: Option<Length> = "hole-depth", "Hole depth", Of(Quantity::Length);
        dents: Option<u32> = "dents", "Dents to fill", Count(500);
        dent_width: Option<Length> = "dent-width", "Dent width", Of(Quantity::Length);
        dent_depth: Option<Length> = "dent-depth", "Dent depth", Of(Quantity::Length);
    }
    /// Leaf, stencils, transfers, paper and cast ornaments on a piece.
    ArtLine = "art" (of_piece: true, is_single: false) {
        kind: Option<ArtKind> = "kind", "Type", Choice(ArtKind::ANSWERS);
        place: String = "place", "Place", Text;
        width: Option<Length> = "width", "Width", Of(Quantity::Length);
        height: Option<Length> = "height", "Height", Of(Quantity::Length);
        count: Option<u32> = "count", "Quantity", Count(500);
        cover: Option<Share> = "cover", "Share covered", Of(Quantity::Share);
        sheet_width: Option<Length> = "sheet-width", "Sheet width", Of(Quantity::Length);
        sheet_height: Option<Length> = "sheet-height", "Sheet height", Of(Quantity::Length);
        volume: Option<Volume> = "volume", "Volume of one mold", Of(Quantity::Volume);
        price: Option<u64> = "price", "Price per sheet", Money;
        hours: Option<WorkTime> = "hours", "Time needed", Of(Quantity::Time);
    }
    /// The log of a piece.
    LogLine = "log" (of_piece: true, is_single: false) {
        day: Option<Day> = "day", "Date", OnDay;
        when: Option<LogTime> = "when", "When", Choice(LogTime::ANSWERS);
        photo: bool = "photo", "Photo", Picture;
        note: String = "note", "Note", Words;
    }
    /// Finished steps. The line's id is the key of the step.
    DoneStep = "done" (of_piece: true, is_single: false) {
        day: Option<Day> = "day", "Date done", OnDay;
        minute: Option<u32> = "minute", "Minute of the day", Count(1439);
    }
}

/// Returns the label of a field, given its key in saved files.
pub(crate) fn label<R: Record>(key: &'static str) -> &'static str {
    let field = book(R::BOOK).and_then(|book| book.field(key));
    field.map_or(key, |field| field.label)
}

/// A part of a mixing recipe.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CanPart<'a> {
    /// The maker's name for the can.
    pub name: &'a str,
    /// How much of it goes in.
    pub amount: Option<Amount>,
    /// Its dry color.
    pub colour: Option<Colour>,
    /// The key of the material in it, or an empty string.
    pub material: &'a str,
    /// Its density by its label.
    pub density: Option<Density>,
}

impl MixRecipe {
    /// Returns the parts, in the maker's order. Unused parts are empty.
    pub fn parts(&self) -> [CanPart<'_>; 6] {
        [
            CanPart {
                name: &self.part_1,
                amount: self.weight_1,
                colour: self.colour_1,
                material: &self.material_1,
                density: self.density_1,
            },
            CanPart {
                name: &self.part_2,
                amount: self.weight_2,
                colour: self.colour_2,
                material: &self.material_2,
                density: self.density_2,
            },
            CanPart {
                name: &self.part_3,
                amount: self.weight_3,
                colour: self.colour_3,
                material: &self.material_3,
                density: self.density_3,
            },
            CanPart {
                name: &self.part_4,
                amount: self.weight_4,
                colour: self.colour_4,
                material: &self.material_4,
                density: self.density_4,
            },
            CanPart {
                name: &self.part_5,
                amount: self.weight_5,
                colour: self.colour_5,
                material: &self.material_5,
                density: self.density_5,
            },
            CanPart {
                name: &self.part_6,
                amount: self.weight_6,
                colour: self.colour_6,
                material: &self.material_6,
                density: self.density_6,
            },
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
