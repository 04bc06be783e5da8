//! Pieces as link text: the record from the save file, with the maker's own materials that it uses.

use std::fmt;
use std::rc::Rc;

use serde_json::{Map, Value};
use units::SortedMap;

use crate::book::Books;
use crate::document::{OwnMaterial, Piece, PieceId, Workshop};
use crate::format::{self, Loaded, Notice};

/// The maximum size of a piece in bytes, before compression for the link. A typical piece has two or three
/// thousand.
pub const MAX_LINK_BYTES: usize = 64 * 1024;
/// The first version of the save file whose records appear in links.
const FIRST_VERSION: u64 = 3;
/// Required entries of a piece. They are never left out because the defaults depend on the kind and the
/// edition.
const NEEDED: [&str; 4] = ["name", "furniture", "edition", "shown"];

/// Why a piece could not be written to or read from a link.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum LinkError {
    /// The piece is too large for a link.
    TooLarge,
    /// The text of the link is not a piece.
    NotAPiece,
    /// The link was made by a newer version of the tool.
    Newer {
        /// The version of its record.
        version: u64,
    },
}

impl fmt::Display for LinkError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LinkError::TooLarge => write!(
                f,
                "Save the workshop and send the file. This piece is too big for a link (limit {} kB).",
                MAX_LINK_BYTES / 1024
            ),
            LinkError::NotAPiece => f.write_str("This link is damaged. Ask for it again, or for the file."),
            LinkError::Newer { version } => write!(
                f,
                "Reload the page, then open the link again. The link has format {version}; this page reads up to {}.",
                format::VERSION
            ),
        }
    }
}

impl std::error::Error for LinkError {}

/// Returns a piece as text for a link, without its id. `own` are the maker's own materials. Values that equal
/// the defaults in the edition of the piece are left out, and so are prices and the books of the piece.
///
/// # Errors
/// If the piece exceeds [`MAX_LINK_BYTES`].
///
/// # Example
/// ```
/// use workshop::{Edit, PieceId, Workshop, out::{link_text, read_link}};
/// let ours = workshop::invented_workshop();
/// let text = link_text(&ours.pieces[0], &ours.materials)?;
/// let sent = read_link(&text, PieceId("sent-1".into()))?;
/// let theirs = Workshop::default().apply(Edit::Gather(sent.workshop)).unwrap();
/// assert_eq!(theirs.pieces[0].name, ours.pieces[0].name);
/// # Ok::<(), workshop::out::LinkError>(())
/// ```
pub fn link_text(piece: &Piece, own: &[Rc<OwnMaterial>]) -> Result<String, LinkError> {
    let layers = piece.schemes().flat_map(|scheme| &scheme.layers);
    let planned: Vec<&str> = layers.map(|layer| &*layer.material).collect();
    let used = own.iter().filter(|own| planned.contains(&&*own.key));
    // The prices that the maker paid are private.
    let unpriced = used.map(|own| {
        Rc::new(OwnMaterial {
            prices: SortedMap::new(),
            ..(**own).clone()
        })
    });
    let bare = Piece {
        books: Books::default(),
        ..piece.clone()
    };
    let mut file = written(bare, unpriced.collect());
    let usual = Piece::of_edition(piece.id.clone(), piece.kind, piece.edition);
    let usual = first_piece(&mut written(usual, vec![]));
    let mut record = first_piece(&mut file);
    leave_out_usual(&mut record, &usual);
    let mut link = Map::new();
    link.insert("version".into(), format::VERSION.into());
    if let Some(materials) = file.get_mut("materials") {
        link.insert("materials".into(), materials.take());
    }
    link.insert("piece".into(), record);
    // The page already contains the code for pretty-printing. Removing its indents gives nearly the shortest
    // text.
    let text = serde_json::to_string_pretty(&Value::from(link)).unwrap_or_default();
    let text: String = text.lines().map(str::trim_start).collect();
    if text.len() > MAX_LINK_BYTES {
        return Err(LinkError::TooLarge);
    }
    Ok(text)
}

/// Entries of a piece whose parts have ids. The recipient assigns new ids.
const WITH_IDS: [&str; 5] = ["bays", "upper", "changes", "zones", "scheme"];

/// Removes the ids of all entries.
fn leave_out_ids(value: &mut Value) {
    match value {
        Value::Array(list) => list.iter_mut().for_each(leave_out_ids),
        Value::Object(entries) => {
            entries.remove("id");
            entries.values_mut().for_each(leave_out_ids);
        }
        _ => {}
    }
}

/// Returns the save file of this one piece, as JSON.
fn written(piece: Piece, materials: Vec<Rc<OwnMaterial>>) -> Value {
    let text = format::save(&Workshop {
        materials,
        pieces: vec![Rc::new(piece)],
        ..Workshop::default()
    });
    serde_json::from_str(&text).unwrap_or_default()
}

fn first_piece(file: &mut Value) -> Value {
    let piece = file.get_mut("pieces").and_then(|pieces| pieces.get_mut(0));
    let mut piece = piece.map(Value::take).unwrap_or_default();
    if let Some(entries) = piece.as_object_mut() {
        entries.remove("ids");
    }
    for entry in WITH_IDS {
        piece.get_mut(entry).into_iter().for_each(leave_out_ids);
    }
    piece
}

/// Removes entries that equal their defaults.
fn leave_out_usual(piece: &mut Value, usual: &Value) {
    let zones = piece.get_mut("zones").and_then(Value::as_object_mut);
    for (_, zone) in zones.into_iter().flatten() {
        if let Some(scheme) = zone.get_mut("scheme") {
            leave_out(scheme, usual.get("scheme"), &[]);
        }
    }
    for entry in ["styles", "scheme"] {
        if let Some(value) = piece.get_mut(entry) {
            leave_out(value, usual.get(entry), &[]);
        }
    }
    leave_out(piece, Some(usual), &NEEDED);
    if let Some(entries) = piece.as_object_mut() {
        entries.remove("id");
        for entry in ["styles", "scheme"] {
            if entries
                .get(entry)
                .and_then(Value::as_object)
                .is_some_and(Map::is_empty)
            {
                entries.remove(entry);
            }
        }
    }
}

/// Removes entries that equal the defaults, except those in `needed`.
fn leave_out(value: &mut Value, usual: Option<&Value>, needed: &[&str]) {
    let usual = usual.and_then(Value::as_object);
    if let Some((entries, usual)) = value.as_object_mut().zip(usual) {
        for (entry, value) in usual {
            if entries.get(entry) == Some(value) && !needed.contains(&entry.as_str()) {
                entries.remove(entry);
            }
        }
    }
}

/// Reads the piece of a link into a workshop for [`crate::Edit::Gather`]. `id` must never have been used in
/// the receiving workshop. Invalid values are repaired or dropped with a notice, as in a save file.
///
/// # Errors
/// If the text exceeds [`MAX_LINK_BYTES`], is not a piece, or was made by a newer version.
pub fn read_link(text: &str, id: PieceId) -> Result<Loaded, LinkError> {
    if text.len() > MAX_LINK_BYTES {
        return Err(LinkError::TooLarge);
    }
    let link: Value = serde_json::from_str(text).map_err(|_| LinkError::NotAPiece)?;
    let version = link.get("version").and_then(Value::as_u64).unwrap_or(0);
    if version > format::VERSION {
        return Err(LinkError::Newer { version });
    }
    let piece = link.get("piece").and_then(Value::as_object);
    let mut piece = piece
        .filter(|_| version >= FIRST_VERSION)
        .ok_or(LinkError::NotAPiece)?
        .clone();
    let is_unsure = !piece.contains_key("edition") && leaves_out_coats(&piece);
    piece.insert("id".into(), id.0.as_ref().into());
    let mut file = Map::new();
    file.insert("kind".into(), format::KIND.into());
    file.insert("version".into(), version.into());
    if let Some(materials) = link.get("materials") {
        file.insert("materials".into(), materials.clone());
    }
    file.insert("pieces".into(), Value::Array(vec![piece.into()]));
    let mut loaded = format::load_value(file.into()).map_err(|_| LinkError::NotAPiece)?;
    let piece = loaded.workshop.pieces.first().ok_or(LinkError::NotAPiece)?;
    if is_unsure {
        let piece = piece.name.clone();
        loaded.notices.push(Notice::CoatsLeftOut { piece });
    }
    Ok(loaded)
}

/// Returns true if a scheme of the piece has no coats. The default coats changed once before links stored
/// their edition, so nothing in such a link tells which ones were meant.
fn leaves_out_coats(piece: &Map<String, Value>) -> bool {
    let is_without = |scheme: Option<&Value>| scheme.and_then(|scheme| scheme.get("layers")).is_none();
    let zones = piece.get("zones").and_then(Value::as_object);
    let mut of_zones = zones
        .into_iter()
        .flatten()
        .filter_map(|(_, zone)| zone.get("scheme"));
    is_without(piece.get("scheme")) || of_zones.any(|scheme| is_without(Some(scheme)))
}

#[cfg(test)]
mod tests;
