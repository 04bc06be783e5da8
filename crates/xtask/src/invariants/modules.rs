//! The modules of a crate as its sources declare them, and what each file names of the others.
//!
//! Only names are followed, not types: a method call is not seen, but the import of its type is. Tests are left out.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use proc_macro2::{TokenStream, TokenTree};
use syn::visit::Visit;
use syn::{Attribute, Item, UseTree, Visibility};

/// The modules of a crate.
pub(super) struct Modules {
    modules: Vec<Module>,
    files: Vec<String>,
    /// What a name in a module was found to be; nothing too while it is looked up, so that no circle of imports is followed
    /// for ever.
    found: RefCell<BTreeMap<(usize, String), Option<Found>>>,
}

/// What a name stands for: the file, and the module if it is one.
#[derive(Clone, Copy)]
struct Found {
    file: usize,
    module: Option<usize>,
}

struct Module {
    /// The number of its file.
    file: usize,
    parent: Option<usize>,
    children: BTreeMap<String, usize>,
    /// What it defines.
    items: BTreeSet<String>,
    /// What it imports by a name, and the path.
    imports: BTreeMap<String, Vec<String>>,
    /// From where it imports everything.
    globs: Vec<Vec<String>>,
    /// Every path that it names outside tests. An import that is handed on is none: it is followed where it is used.
    paths: Vec<Vec<String>>,
}

impl Modules {
    /// Reads a crate from its `lib.rs` or `main.rs`.
    pub(super) fn read(root: &Path) -> Result<Self> {
        let mut modules = Modules {
            modules: Vec::new(),
            files: Vec::new(),
            found: RefCell::default(),
        };
        let folder = root.parent().context("a file has no folder")?;
        modules.read_file(root, folder, folder, None)?;
        Ok(modules)
    }

    /// The names of the files, from the folder of the crate.
    pub(super) fn files(&self) -> &[String] {
        &self.files
    }

    /// Which files each file needs, by number. What a file takes of its own ancestors does not count: a parent and its
    /// children are one unit, and the parent is the one that knows the other.
    pub(super) fn needs(&self) -> Vec<BTreeSet<usize>> {
        let mut needs = vec![BTreeSet::new(); self.files.len()];
        for (number, module) in self.modules.iter().enumerate() {
            let ancestors: BTreeSet<usize> =
                std::iter::successors(Some(number), |at| self.modules.get(*at)?.parent)
                    .filter_map(|at| Some(self.modules.get(at)?.file))
                    .collect();
            let of_file = module.paths.iter().filter_map(|path| self.resolve(number, path));
            let of_file = of_file
                .map(|found| found.file)
                .filter(|file| !ancestors.contains(file));
            if let Some(needs) = needs.get_mut(module.file) {
                needs.extend(of_file);
            }
        }
        needs
    }

    /// `folder` is where the children of the module lie.
    fn read_file(&mut self, file: &Path, folder: &Path, top: &Path, parent: Option<usize>) -> Result<usize> {
        let text = fs::read_to_string(file).with_context(|| format!("Can't read {}", file.display()))?;
        let parsed = syn::parse_file(&text).with_context(|| format!("Can't parse {}", file.display()))?;
        let name = file.strip_prefix(top).unwrap_or(file);
        self.files.push(name.to_string_lossy().replace('\\', "/"));
        let of_file = self.files.len() - 1;
        self.read_items(&parsed.items, of_file, folder, top, parent)
    }

    fn read_items(
        &mut self,
        items: &[Item],
        file: usize,
        folder: &Path,
        top: &Path,
        parent: Option<usize>,
    ) -> Result<usize> {
        let number = self.modules.len();
        self.modules.push(Module {
            file,
            parent,
            children: BTreeMap::new(),
            items: BTreeSet::new(),
            imports: BTreeMap::new(),
            globs: Vec::new(),
            paths: Vec::new(),
        });
        for item in items {
            if let Item::Mod(child) = item {
                if is_test(&child.attrs) {
                    continue;
                }
                let name = child.ident.to_string();
                let within = folder.join(&name);
                let of_child = match &child.content {
                    Some((_, items)) => self.read_items(items, file, &within, top, Some(number))?,
                    None => self.read_file(&file_of(folder, &name), &within, top, Some(number))?,
                };
                if let Some(module) = self.modules.get_mut(number) {
                    module.children.insert(name, of_child);
                }
            } else if let Some(module) = self.modules.get_mut(number) {
                module.add(item);
            }
        }
        Ok(number)
    }

    /// What a path stands for, as the module with this number writes it; nothing for what is not of this crate.
    fn resolve(&self, from: usize, path: &[String]) -> Option<Found> {
        let mut at = from;
        let mut names = path.iter().peekable();
        let mut is_ours = false;
        while let Some(name) = names.peek() {
            at = match name.as_str() {
                "crate" => 0,
                "self" => at,
                "super" => self.modules.get(at)?.parent?,
                _ => break,
            };
            is_ours = true;
            names.next();
        }
        let mut found = Found {
            file: self.modules.get(at)?.file,
            module: Some(at),
        };
        for name in names {
            // What stands behind an item is a variant or a function of it.
            let Some(module) = found.module else { break };
            found = match self.find(module, name) {
                Some(found) => found,
                // A macro may define what is not found here.
                None if is_ours => break,
                None => return None,
            };
            is_ours = true;
        }
        Some(found)
    }

    fn find(&self, at: usize, name: &str) -> Option<Found> {
        let key = (at, name.to_owned());
        if let Some(found) = self.found.borrow().get(&key) {
            return *found;
        }
        self.found.borrow_mut().insert(key.clone(), None);
        let found = self.find_anew(at, name);
        self.found.borrow_mut().insert(key, found);
        found
    }

    fn find_anew(&self, at: usize, name: &str) -> Option<Found> {
        let module = self.modules.get(at)?;
        if let Some(child) = module.children.get(name) {
            let file = self.modules.get(*child)?.file;
            return Some(Found {
                file,
                module: Some(*child),
            });
        }
        if module.items.contains(name) {
            return Some(Found {
                file: module.file,
                module: None,
            });
        }
        if let Some(path) = module.imports.get(name) {
            return self.resolve(at, path);
        }
        module.globs.iter().find_map(|glob| {
            let of = self.resolve(at, glob)?.module?;
            self.find(of, name)
        })
    }
}

/// Where the module of this name lies.
fn file_of(folder: &Path, name: &str) -> PathBuf {
    let file = folder.join(format!("{name}.rs"));
    if file.is_file() {
        file
    } else {
        folder.join(name).join("mod.rs")
    }
}

/// Whether an item is there for tests only.
pub(super) fn is_test(attributes: &[Attribute]) -> bool {
    attributes.iter().any(|attribute| {
        let list = attribute.meta.require_list();
        attribute.path().is_ident("test")
            || attribute.path().is_ident("cfg") && list.is_ok_and(|list| list.tokens.to_string() == "test")
    })
}

impl Module {
    fn add(&mut self, item: &Item) {
        let name = match item {
            Item::Const(item) => Some((&item.ident, &item.attrs)),
            Item::Enum(item) => Some((&item.ident, &item.attrs)),
            Item::Fn(item) => Some((&item.sig.ident, &item.attrs)),
            Item::Static(item) => Some((&item.ident, &item.attrs)),
            Item::Struct(item) => Some((&item.ident, &item.attrs)),
            Item::Trait(item) => Some((&item.ident, &item.attrs)),
            Item::Type(item) => Some((&item.ident, &item.attrs)),
            Item::Use(item) => {
                if !is_test(&item.attrs) {
                    let is_handed_on = !matches!(item.vis, Visibility::Inherited);
                    self.import(&item.tree, &mut Vec::new(), is_handed_on);
                }
                return;
            }
            Item::Impl(item) if is_test(&item.attrs) => return,
            _ => None,
        };
        if let Some((name, attributes)) = name {
            if is_test(attributes) {
                return;
            }
            self.items.insert(name.to_string());
        }
        Paths(&mut self.paths).visit_item(item);
    }

    fn import(&mut self, tree: &UseTree, before: &mut Vec<String>, is_handed_on: bool) {
        match tree {
            UseTree::Path(path) => {
                before.push(path.ident.to_string());
                self.import(&path.tree, before, is_handed_on);
                before.pop();
            }
            UseTree::Group(group) => {
                for tree in &group.items {
                    self.import(tree, before, is_handed_on);
                }
            }
            UseTree::Glob(_) => {
                self.globs.push(before.clone());
                if !is_handed_on {
                    self.paths.push(before.clone());
                }
            }
            UseTree::Name(name) => self.import_as(&name.ident, &name.ident, before, is_handed_on),
            UseTree::Rename(name) => self.import_as(&name.ident, &name.rename, before, is_handed_on),
        }
    }

    fn import_as(&mut self, of: &syn::Ident, name: &syn::Ident, before: &[String], is_handed_on: bool) {
        let mut path = before.to_vec();
        let mut name = name.to_string();
        if of == "self" {
            if name == "self" {
                name = before.last().cloned().unwrap_or_default();
            }
        } else {
            path.push(of.to_string());
        }
        if !is_handed_on {
            self.paths.push(path.clone());
        }
        self.imports.insert(name, path);
    }
}

/// Collects the paths of an item, but for its tests.
struct Paths<'a>(&'a mut Vec<Vec<String>>);

impl<'a> Visit<'a> for Paths<'_> {
    fn visit_path(&mut self, path: &'a syn::Path) {
        let segments = path.segments.iter();
        self.0
            .push(segments.map(|segment| segment.ident.to_string()).collect());
        syn::visit::visit_path(self, path);
    }

    fn visit_macro(&mut self, of: &'a syn::Macro) {
        in_tokens(&of.tokens, self.0);
    }

    fn visit_item_use(&mut self, item: &'a syn::ItemUse) {
        // An import within a function.
        let mut module = Module {
            file: 0,
            parent: None,
            children: BTreeMap::new(),
            items: BTreeSet::new(),
            imports: BTreeMap::new(),
            globs: Vec::new(),
            paths: Vec::new(),
        };
        module.import(&item.tree, &mut Vec::new(), false);
        self.0.append(&mut module.paths);
    }
}

/// The paths in the tokens of a macro: names with `::` between them.
pub(super) fn in_tokens(tokens: &TokenStream, paths: &mut Vec<Vec<String>>) {
    let mut path: Vec<String> = Vec::new();
    let mut colons = 0;
    for token in tokens.clone() {
        match &token {
            TokenTree::Ident(name) => {
                if colons != 2 && !path.is_empty() {
                    paths.push(std::mem::take(&mut path));
                }
                path.push(name.to_string());
                colons = 0;
                continue;
            }
            TokenTree::Punct(sign) if sign.as_char() == ':' && !path.is_empty() => {
                colons += 1;
                continue;
            }
            TokenTree::Group(group) => in_tokens(&group.stream(), paths),
            _ => {}
        }
        if !path.is_empty() {
            paths.push(std::mem::take(&mut path));
        }
        colons = 0;
    }
    if !path.is_empty() {
        paths.push(path);
    }
}
