//! Plain records of quantities with public fields.

/// Makes a plain, copyable struct. Outside Rust, and when serialised, each field carries the name
/// given after `=`, with its unit, and unknown names are refused.
macro_rules! record {
    (
        $(#[$about:meta])*
        pub struct $name:ident {
            $($(#[$meaning:meta])* $field:ident: $kind:ty = $outside:literal,)+
        }
    ) => {
        $(#[$about])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        #[cfg_attr(
            feature = "serde",
            derive(serde::Serialize, serde::Deserialize),
            serde(deny_unknown_fields)
        )]
        pub struct $name {
            $(
                $(#[$meaning])*
                #[cfg_attr(feature = "serde", serde(rename = $outside))]
                pub $field: $kind,
            )+
        }
    };
}
pub(crate) use record;
