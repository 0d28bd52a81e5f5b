"""The groove for a drawer's bottom: in sides and front, or in slips, and with a muntin for a wide one."""
